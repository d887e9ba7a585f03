import { describe, expect, it } from 'vitest'
import {
  contentsAt,
  density,
  refrigerant,
  refrigerants,
  saturationPressure,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

describe.each(refrigerants())('what $id refuses', ({ id }) => {
  const r = refrigerant(id)
  const { dew, criticalTemperatureK, criticalPressurePa, startsAtTriplePoint } = r
  const [coldK, coldPa] = [dew.fromK - 1.234_567, dew.fromPa * 0.912_345_678]
  const cases: readonly (readonly [code: string, run: () => unknown])[] = [
    ['above-critical', () => saturationTemperature(r, criticalPressurePa, 'dew')],
    ['above-critical', () => saturationTemperature(r, 1.234_567_89 * criticalPressurePa, 'dew')],
    ['above-critical', () => saturationPressure(r, criticalTemperatureK, 'dew')],
    ['above-critical', () => saturationPressure(r, criticalTemperatureK + 1.234_567, 'dew')],
    ['out-of-range', () => saturationTemperature(r, (dew.toPa + criticalPressurePa) / 2, 'dew')],
    ['out-of-range', () => saturationPressure(r, (dew.toK + criticalTemperatureK) / 2, 'dew')],
    [
      startsAtTriplePoint ? 'below-triple' : 'out-of-range',
      () => saturationTemperature(r, coldPa, 'dew'),
    ],
    [
      startsAtTriplePoint ? 'below-triple' : 'out-of-range',
      () => saturationPressure(r, coldK, 'dew'),
    ],
    ['out-of-range', () => density(r, 1.000_123_4 * r.equationMaximumK, 1.234_567e5, 'vapour')],
  ]

  it.each(cases)(
    'is refused as %s, in figures that a person can read and in both systems (%#)',
    (code, run) => {
      const refused = refusalOf(run)
      expect(refused.code).toBe(code)
      const said = `${refused.message} ${refused.hint}`
      const name = new RegExp(id.replaceAll(/[^\w-]/gu, '.'), 'gu')
      const figures = said.replaceAll(name, '').match(/\d+(?:\.\d+)?/gu) ?? []
      expect(figures.length).toBeGreaterThan(1)
      // no digits that only the curve has: up to a whole megapascal in kPa
      for (const figure of figures) {
        expect(figure.replace('.', '').replace(/^0+/u, '').length, said).toBeLessThanOrEqual(7)
      }
      expect(said).toMatch(/°F .*°C|psia .*kPa|micron .*Pa/u)
    },
  )

  it('is answered at the very ends of its curves, as contents too', () => {
    const { minimumTemperatureK, maximumTemperatureK } = r
    for (const kelvin of [minimumTemperatureK, maximumTemperatureK]) {
      const liquid = r.bubble.density(kelvin)
      expect(contentsAt(r, kelvin, 1.01 * liquid).holds).toBe('liquid-full')
      expect(contentsAt(r, kelvin, 0.5 * dew.density(kelvin)).holds).toBe('vapour')
    }
    const just = refusalOf(() => contentsAt(r, maximumTemperatureK + 0.01, 300))
    expect(['out-of-range', 'above-critical']).toContain(just.code)
  })
})
