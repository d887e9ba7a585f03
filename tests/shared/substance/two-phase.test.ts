import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { pointOnLine } from '../../../shared/substance/saturation-line.ts'
import { stability } from '../../../shared/substance/stability.ts'
import { splitPhases, type TwoPhase } from '../../../shared/substance/two-phase.ts'
import { solved } from '../../support/blend.ts'

const { fluid, z, bubble } = solved('R-448A')
const kelvin = fc.double({ min: 235, max: 335, noNaN: true })
const share = fc.double({ min: 0.02, max: 0.98, noNaN: true })

function startAt(temperatureK: number, liquidShare: number): TwoPhase {
  const { liquid, vapour } = pointOnLine(bubble, temperatureK)
  const volume = 1 / (liquidShare * liquid.density + (1 - liquidShare) * vapour.density)
  return {
    liquid,
    vapour,
    liquidVolume: liquidShare * volume,
    vapourVolume: (1 - liquidShare) * volume,
  }
}

describe('one mole of R-448A in a vessel', () => {
  it('conserves every component and evens out fugacity and pressure', () => {
    fc.assert(
      fc.property(kelvin, share, (t, liquidShare) => {
        const found = splitPhases(fluid, t, z, { liquidShare }, startAt(t, liquidShare))
        const { liquid, vapour, liquidVolume, vapourVolume } = found
        expect(liquidVolume / (liquidVolume + vapourVolume)).toBeCloseTo(liquidShare, 9)
        expect(liquid.pressurePa / vapour.pressurePa).toBeCloseTo(1, 7)
        z.forEach((zi, i) => {
          const sum =
            liquidVolume * liquid.density * (liquid.x[i] ?? 0) +
            vapourVolume * vapour.density * (vapour.x[i] ?? 0)
          expect(sum / zi).toBeCloseTo(1, 9)
          expect(liquid.logFugacity[i]).toBeCloseTo(vapour.logFugacity[i] ?? Number.NaN, 8)
        })
      }),
      { numRuns: 60 },
    )
  })

  it('is the same whether its volume or its pressure is held', () => {
    fc.assert(
      fc.property(kelvin, share, (t, liquidShare) => {
        const first = splitPhases(fluid, t, z, { liquidShare }, startAt(t, liquidShare))
        const volume = first.liquidVolume + first.vapourVolume
        const byVolume = splitPhases(fluid, t, z, { volume }, startAt(t, liquidShare))
        const { pressurePa } = first.vapour
        const byPressure = splitPhases(fluid, t, z, { pressurePa }, byVolume)
        expect(byVolume.vapour.pressurePa / pressurePa).toBeCloseTo(1, 8)
        expect(byPressure.liquidVolume / first.liquidVolume).toBeCloseTo(1, 6)
      }),
      { numRuns: 40 },
    )
  })

  it('comes out with less than no liquid where the vessel is too big for any, or is not found', () => {
    const t = 300
    const { vapour } = pointOnLine(solved('R-448A').dew, t)
    const volume = 1.02 / vapour.density
    let found: TwoPhase | undefined
    try {
      found = splitPhases(fluid, t, z, { volume }, startAt(t, 0.02))
    } catch (error) {
      expect(error).toBeInstanceOf(CalcError)
    }
    if (found !== undefined) expect(found.liquidVolume).toBeLessThan(0)
  })
})

describe('the stability test', () => {
  it('finds a split between the two lines and none outside', () => {
    const t = 300
    const high = pointOnLine(bubble, t).pressurePa
    const low = pointOnLine(solved('R-448A').dew, t).pressurePa
    expect(stability(fluid, z, t, (high + low) / 2).split).toBeDefined()
    expect(stability(fluid, z, t, 1.01 * high)).toMatchObject({ kind: 'liquid' })
    expect(stability(fluid, z, t, 1.01 * high).split).toBeUndefined()
    expect(stability(fluid, z, t, 0.99 * low)).toMatchObject({ kind: 'vapour' })
    expect(stability(fluid, z, t, 0.99 * low).split).toBeUndefined()
  })
})
