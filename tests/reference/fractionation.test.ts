import { describe, expect, it } from 'vitest'
import { letOut } from '../../shared/service/fractionation/vessel.ts'
import { massFractions } from '../../shared/substance/mixture.ts'
import { solved } from '../support/blend.ts'
import golden from './golden/fractionation.json' with { type: 'json' }

interface Case {
  readonly id: string
  readonly temperatureK: number
  readonly liquidShare: number
  readonly escapes: string
  readonly lost: number
  readonly rows: readonly (readonly number[])[]
}
const cases = golden.cases as unknown as readonly Case[]

// The reference's midpoint rule with 30 steps is good to about 1e-4 where little is left.
const FRACTION = 2e-4
const PRESSURE = 5e-4

describe.each(cases)('$id, $escapes out of a vessel at $temperatureK K', (c) => {
  it('leaves what an independent integration with another solver leaves', () => {
    const { fluid, info } = solved(c.id)
    const amounts = Float64Array.from(
      info.composition,
      ({ massFraction }, i) => massFraction / (fluid.molarMasses[i] ?? Number.NaN),
    )
    const escapes = c.escapes === 'liquid' ? 'liquid' : 'vapour'
    for (const row of c.rows) {
      const [lost, pressurePa, ...left] = row as [number, number, ...number[]]
      const { states } = letOut(
        fluid,
        amounts,
        c.temperatureK,
        c.liquidShare,
        escapes,
        lost || 1e-9,
      )
      const last = states.at(-1)
      const total = last?.amounts.reduce((a, b) => a + b, 0) ?? Number.NaN
      const mole = [...(last?.amounts ?? [])].map((n) => n / total)
      massFractions(mole, fluid.molarMasses).forEach((w, i) => {
        expect(Math.abs(w - (left[i] ?? Number.NaN))).toBeLessThan(FRACTION)
      })
      expect(Math.abs((last?.pressurePa ?? 0) / pressurePa - 1)).toBeLessThan(PRESSURE)
    }
  })
})
