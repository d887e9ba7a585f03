import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { density } from '../../../shared/substance/density.ts'
import { SUBSTANCES, substanceData, substanceModel } from '../../../shared/substance/library.ts'
import { saturation } from '../../../shared/substance/saturation.ts'
import { pressure } from '../../../shared/substance/state.ts'
import { refusalOf } from '../../support/refusal.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })

describe.each(SUBSTANCES)('density of $id', (data) => {
  const model = substanceModel(data.id)
  const tc = data.critical.temperatureK
  const coldest = Math.max(213.15, data.triple.temperatureK)

  it('is the vapour below saturation pressure, thinner than saturated', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const t = coldest + (0.999 * tc - coldest) * a
        const saturated = saturation(model, data, t)
        const p = saturated.pressurePa * 10 ** (-4 * b) * (1 - 1e-6)
        const rho = density(model, t, p, 'vapour')
        expect(Math.abs(pressure(model, t, rho) / p - 1)).toBeLessThan(1e-9)
        expect(rho).toBeLessThan(saturated.vapour)
      }),
      { numRuns: 100 },
    )
  })

  it('is the liquid above saturation pressure, denser than saturated', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const t = coldest + (0.999 * tc - coldest) * a
        const saturated = saturation(model, data, t)
        const p = saturated.pressurePa + b * 2e7 + 10
        const rho = density(model, t, p, 'liquid')
        expect(Math.abs(pressure(model, t, rho) - p)).toBeLessThan(1e-9 * p + 1e-3)
        expect(rho).toBeGreaterThan(saturated.liquid * (1 - 1e-12))
      }),
      { numRuns: 100 },
    )
  })

  it('has one root above the critical temperature, whichever phase is named', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const t = Math.min(tc * (1.005 + 0.2 * a), data.valid.maximumTemperatureK)
        const p = 1e4 * (2e7 / 1e4) ** b
        const rho = density(model, t, p, 'vapour')
        expect(Math.abs(density(model, t, p, 'liquid') / rho - 1)).toBeLessThan(1e-9)
        expect(Math.abs(pressure(model, t, rho) / p - 1)).toBeLessThan(1e-9)
      }),
      { numRuns: 100 },
    )
  })
})

describe('a density that does not exist', () => {
  const model = substanceModel('R-134a')

  it('is refused as vapour far above saturation pressure', () => {
    expect(refusalOf(() => density(model, 300, 5e6, 'vapour')).code).toBe('two-phase')
  })

  it('is refused as liquid at a pressure no liquid can be drawn down to', () => {
    expect(refusalOf(() => density(model, 370, 1e5, 'liquid')).code).toBe('two-phase')
  })

  it.each(SUBSTANCES)('is refused beyond five times the reducing density: $id', (data) => {
    // No equation was fitted there: what it gives would be a number and no density.
    const own = substanceModel(data.id)
    const kelvin = 1.2 * data.critical.temperatureK
    for (const phase of ['liquid', 'vapour', 'only'] as const) {
      const inside = pressure(own, kelvin, 4 * own.reducingDensity)
      if (inside > 0) {
        const found = density(own, kelvin, inside, phase)
        expect(found / own.reducingDensity).toBeCloseTo(4, 6)
      }
      const beyond = pressure(own, kelvin, 5.5 * own.reducingDensity)
      if (beyond > inside) {
        expect(refusalOf(() => density(own, kelvin, beyond, phase)).code).toBe('two-phase')
      }
    }
  })

  it.each([
    [Number.NaN, 1e5],
    [300, Number.NaN],
    [0, 1e5],
    [300, 0],
    [-5, 1e5],
    [300, -1],
    [300, Infinity],
    [Infinity, Infinity],
  ])('is refused at %d K and %d Pa', (t, p) => {
    expect(refusalOf(() => density(model, t, p, 'vapour')).code).toBe('out-of-range')
  })
})

describe('saturation outside its range', () => {
  const model = substanceModel('R-744')
  const data = substanceData('R-744')
  it.each([
    [200, 'below-triple'],
    [304.2, 'above-critical'],
    [304.12, 'above-critical'],
    [Number.NaN, 'below-triple'],
  ])('is refused at %d K', (t, code) => {
    expect(refusalOf(() => saturation(model, data, t)).code).toBe(code)
  })
})
