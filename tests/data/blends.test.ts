import { describe, expect, it } from 'vitest'
import warming from '../../data/service/warming-potentials.json' with { type: 'json' }
import { BLENDS } from '../support/blend.ts'

interface Row {
  readonly AR4: number
  readonly AR5: number
  readonly AR6: number
  readonly odp: number
}
const components: Readonly<Record<string, Row>> = warming.substances

describe.each(BLENDS.map((b) => [b.id, b] as const))('%s', (_, blend) => {
  const sum = (of: (row: Row) => number) =>
    blend.composition.reduce((total, { substance, massFraction }) => {
      const row = components[substance]
      if (row === undefined) {
        throw new Error(
          `${substance} has no row in data/service/warming-potentials.json: add its AR4, AR5, AR6 and odp, each with its source`,
        )
      }
      return total + massFraction * of(row)
    }, 0)

  it('has mass fractions that sum to 1', () => {
    expect(blend.composition.reduce((s, c) => s + c.massFraction, 0)).toBeCloseTo(1, 9)
  })

  it('has the warming potential of its components by mass, in each assessment report', () => {
    expect(blend.gwp.map((g) => g.report)).toEqual(['AR4', 'AR5', 'AR6'])
    for (const { report, value } of blend.gwp) {
      const byMass = sum((row) => row[report])
      const says = `${report} in data/refrigerants/${blend.id}.json is ${value}; its components by mass give ${byMass.toFixed(1)}`
      expect(Math.abs(value - byMass), says).toBeLessThanOrEqual(0.5)
    }
  })

  it('has the ozone depletion potential of its components by mass', () => {
    expect(Math.abs(blend.odp.value - sum((row) => row.odp))).toBeLessThan(1e-4)
  })
})

describe('warming potentials by AR4', () => {
  // As computed by the formula of Directive 2006/40/EC, Annex, and in common use on labels.
  it.each([
    ['R-404A', 3922],
    ['R-407C', 1774],
    ['R-410A', 2088],
    ['R-507A', 3985],
    ['R-449A', 1397],
    ['R-513A', 631],
  ] as const)('of %s is %d', (id, value) => {
    expect(BLENDS.find((b) => b.id === id)?.gwp[0]?.value).toBe(value)
  })
})
