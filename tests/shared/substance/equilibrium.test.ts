import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { saturationPoint } from '../../../shared/substance/equilibrium.ts'
import { firstGuess } from '../../../shared/substance/first-guess.ts'
import { substanceData, substanceModel } from '../../../shared/substance/library.ts'
import { criticalPoint } from '../../../shared/substance/mixture-critical.ts'
import { multifluid } from '../../../shared/substance/multifluid.ts'
import { saturation } from '../../../shared/substance/saturation.ts'
import { pointOnLine } from '../../../shared/substance/saturation-line.ts'
import { BLENDS, solved, temperatureAt } from '../../support/blend.ts'
import { flashPH, flashTP } from '../../support/flash.ts'

const ids = BLENDS.map((b) => b.id)
const AZEOTROPES = BLENDS.filter((b) => b.kind === 'azeotrope').map((b) => b.id)
const NEAR_AZEOTROPES = BLENDS.filter((b) => b.kind === 'near-azeotrope').map((b) => b.id)

describe.each(ids)('%s', (id) => {
  const { bubble, dew, fromK } = solved(id)
  const critical = criticalPoint(bubble, dew)
  const highest = 0.998 * critical.temperatureK

  it('has equal fugacities and pressures all along both lines', () => {
    for (const { fugacityError, liquid, vapour } of [...bubble.points, ...dew.points]) {
      expect(fugacityError).toBeLessThan(1e-9)
      liquid.logFugacity.forEach((f, i) => {
        expect(Math.abs(f - (vapour.logFugacity[i] ?? Number.NaN))).toBeLessThan(1e-9)
      })
    }
  })

  it('has a bubble pressure at or above the dew pressure, both rising with temperature', () => {
    let last = { bubble: 0, dew: 0 }
    for (let k = 0; k <= 60; k += 1) {
      const t = fromK + ((highest - fromK) * k) / 60
      const here = {
        bubble: pointOnLine(bubble, t).pressurePa,
        dew: pointOnLine(dew, t).pressurePa,
      }
      expect(here.bubble).toBeGreaterThanOrEqual(here.dew)
      expect(here.bubble).toBeGreaterThan(last.bubble)
      expect(here.dew).toBeGreaterThan(last.dew)
      last = here
    }
  })

  it('has a critical point that both lines agree on', () => {
    expect(critical.doubtK).toBeLessThan(1e-3)
    expect(critical.temperatureK).toBeGreaterThan(bubble.points.at(-1)?.temperatureK ?? Infinity)
  })

  it('has the line slope that its tangent says', () => {
    const step = 1e-4
    for (const path of [bubble, dew]) {
      const [low, here, high] = [-step, 0, step].map((d) => pointOnLine(path, 280 * Math.exp(d)))
      low?.unknowns.forEach((u, k) => {
        const numeric = ((high?.unknowns[k] ?? 0) - u) / (2 * step)
        expect(Math.abs(numeric / (here?.tangent[k] ?? 0) - 1)).toBeLessThan(1e-5)
      })
    }
  })
})

/** Dew minus bubble temperature at one atmosphere, K. */
function glide(id: string): number {
  const { bubble, dew } = solved(id)
  const [b, d] = [bubble, dew].map((path) =>
    temperatureAt((t) => pointOnLine(path, t).pressurePa, 101_325, 213.15, 300),
  )
  return (d ?? Number.NaN) - (b ?? Number.NaN)
}

describe('glide at one atmosphere', () => {
  it.each(AZEOTROPES)('of the azeotrope %s is almost none', (id) => {
    expect(glide(id)).toBeGreaterThanOrEqual(0)
    expect(glide(id)).toBeLessThan(0.15)
  })
  it.each(NEAR_AZEOTROPES)('of the near-azeotrope %s is below 1 K', (id) => {
    expect(glide(id)).toBeGreaterThan(0)
    expect(glide(id)).toBeLessThan(1)
  })
  it.each(BLENDS.filter((b) => b.kind === 'zeotrope').map((b) => b.id))(
    'of the zeotrope %s is above 1 K',
    (id) => {
      expect(glide(id)).toBeGreaterThan(1)
      expect(glide(id)).toBeLessThan(15)
    },
  )
})

describe('a bubble or dew point', () => {
  it('becomes the pure saturation point as one component goes to 100 %', () => {
    const fluid = multifluid(['R-134a', 'R-32'].map(substanceData))
    const z = Float64Array.of(1 - 1e-10, 1e-10)
    const pure = saturation(substanceModel('R-134a'), substanceData('R-134a'), 280)
    for (const line of ['bubble', 'dew'] as const) {
      const found = saturationPoint(
        fluid,
        z,
        line,
        { temperatureK: 280 },
        firstGuess(fluid, z, line, 280),
      )
      expect(found.liquid.density / pure.liquid).toBeCloseTo(1, 7)
      expect(found.vapour.density / pure.vapour).toBeCloseTo(1, 7)
      // gas constants differ: see MIXTURE_GAS_CONSTANT
      expect(found.pressurePa / pure.pressurePa).toBeCloseTo(1, 5)
    }
  })

  it('is the same found at its temperature and at its pressure', () => {
    const { fluid, z, bubble } = solved('R-407C')
    const atT = pointOnLine(bubble, 300)
    const guess = firstGuess(fluid, z, 'bubble', 290)
    const atP = saturationPoint(fluid, z, 'bubble', { pressurePa: atT.pressurePa }, guess)
    expect(atP.temperatureK).toBeCloseTo(300, 8)
  })

  it('refuses the trivial root above the critical point', () => {
    const { fluid, z, bubble } = solved('R-410A')
    const guess = bubble.points.at(-1)?.unknowns ?? new Float64Array(4)
    expect(() => saturationPoint(fluid, z, 'bubble', { temperatureK: 350 }, guess)).toThrow(
      CalcError,
    )
  })
})

describe('flash of R-407C', () => {
  const { fluid, z, bubble, dew, model } = solved('R-407C')
  const temperature = fc.double({ min: 230, max: 355, noNaN: true })
  const share = fc.double({ min: 0.02, max: 0.98, noNaN: true })

  it('splits between dew and bubble pressure, conserving every component', () => {
    fc.assert(
      fc.property(temperature, share, (t, s) => {
        const [high, low] = [pointOnLine(bubble, t).pressurePa, pointOnLine(dew, t).pressurePa]
        const found = flashTP(fluid, z, t, low + s * (high - low))
        expect(found.kind).toBe('two-phase')
        expect(found.vapourFraction).toBeGreaterThan(0)
        expect(found.vapourFraction).toBeLessThan(1)
        const { liquid, vapour, vapourFraction: beta } = found
        z.forEach((zi, i) => {
          const sum = (1 - beta) * (liquid?.x[i] ?? 0) + beta * (vapour?.x[i] ?? 0)
          expect(sum).toBeCloseTo(zi, 9)
          expect(liquid?.logFugacity[i]).toBeCloseTo(vapour?.logFugacity[i] ?? Number.NaN, 8)
        })
      }),
      { numRuns: 60 },
    )
  })

  it('is one phase outside that band', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (t, s) => {
        const [high, low] = [pointOnLine(bubble, t).pressurePa, pointOnLine(dew, t).pressurePa]
        expect(flashTP(fluid, z, t, high * (1 + s))).toMatchObject({ kind: 'liquid' })
        expect(flashTP(fluid, z, t, low * (1 - s))).toMatchObject({ kind: 'vapour' })
      }),
      { numRuns: 60 },
    )
  })

  it('finds two phases a tenth of a kelvin below the critical point', () => {
    const { temperatureK, pressurePa } = criticalPoint(bubble, dew)
    const t = temperatureK - 0.1
    const [high, low] = [pointOnLine(bubble, t).pressurePa, pointOnLine(dew, t).pressurePa]
    expect(flashTP(fluid, z, t, (high + low) / 2).kind).toBe('two-phase')
    expect(high).toBeGreaterThan(0.99 * pressurePa)
  })

  it('at pressure and enthalpy returns the temperature that the enthalpy came from', () => {
    for (const [t, p] of [
      [250, 200e3],
      [273.15, 500e3],
      [300, 1e6],
      [310, 1.6e6],
    ] as const) {
      const there = flashTP(fluid, z, t, p)
      const back = flashPH(fluid, z, p, there.enthalpy, [220, 350])
      expect(back.temperatureK).toBeCloseTo(t, 6)
      expect(back.vapourFraction).toBeCloseTo(there.vapourFraction, 6)
    }
  })

  it('refuses an enthalpy outside the temperatures given', () => {
    expect(() => flashPH(fluid, z, 5e5, -1e6, [220, 350])).toThrow(/not met between/)
    expect(model.molarMass).toBeCloseTo(0.0862, 4)
  })
})
