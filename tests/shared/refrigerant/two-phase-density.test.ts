import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  contentsAt,
  refrigerant,
  refrigerants,
  twoPhaseDensity,
} from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const id = fc.constantFrom(...refrigerants().map((info) => info.id))
const share = fc.double({ min: 0, max: 1, noNaN: true })

/** A pressure that both lines have, not too near the critical point. */
const pressureOf = (name: string, along: number) => {
  const { bubble, dew } = refrigerant(name)
  const low = Math.max(bubble.fromPa, dew.fromPa)
  return low * ((0.98 * Math.min(bubble.toPa, dew.toPa)) / low) ** along
}

describe('density of liquid and vapour together', () => {
  it('runs from the liquid’s to the vapour’s as the quality rises, within a bounded number of solves', () => {
    fc.assert(
      fc.property(id, share, share, share, (name, along, one, other) => {
        const r = refrigerant(name)
        const pressurePa = pressureOf(name, along)
        const work = { solves: 0 }
        const at = (quality: number) => twoPhaseDensity(r, { pressurePa }, quality, work)
        const [wetter = 0, drier = 1] = [one, other].sort((a, b) => a - b)
        // What the flash leaves open this close to the critical pressure.
        const slack = 1 + 3e-5
        expect(at(0) * slack).toBeGreaterThanOrEqual(at(wetter))
        expect(at(wetter) * slack).toBeGreaterThanOrEqual(at(drier))
        expect(at(drier) * slack).toBeGreaterThanOrEqual(at(1))
        expect(work.solves).toBeLessThanOrEqual(40)
      }),
      { numRuns: 150 },
    )
  })

  it('is that of contents which have this quality at this temperature', () => {
    fc.assert(
      fc.property(id, share, share, (name, along, quality) => {
        const r = refrigerant(name)
        const kelvin =
          r.minimumTemperatureK + along * (0.99 * r.maximumTemperatureK - r.minimumTemperatureK)
        const density = twoPhaseDensity(r, { temperatureK: kelvin }, quality)
        const [thin, dense] = [r.dew.density(kelvin), r.bubble.density(kelvin)]
        fc.pre(density > thin * (1 + 1e-6) && density < dense * (1 - 1e-6))
        expect(contentsAt(r, kelvin, density).quality).toBeCloseTo(quality, 6)
      }),
      { numRuns: 150 },
    )
  })

  it.each([-0.01, 1.01, Number.NaN])('has no quality of %d', (quality) => {
    const refused = refusalOf(() =>
      twoPhaseDensity(refrigerant('R-407C'), { temperatureK: 280 }, quality),
    )
    expect(refused.code).toBe('out-of-range')
  })
})
