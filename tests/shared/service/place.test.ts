import { describe, expect, it } from 'vitest'
import { resolvePlace } from '../../../shared/instrument/index.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const altitude = (feet: number) => quantity('altitude', feet, 'ft')
const barometer = (inHg: number, plusMinus?: number) =>
  quantity('barometricPressure', inHg, 'inHg', plusMinus)

describe('the barometer of a place', () => {
  it('is sea level where nothing is given, and says so', () => {
    const place = resolvePlace({})
    expect(place.barometerPa).toBe(101_325)
    expect(place.assumptions).toHaveLength(1)
    expect(place.assumptions[0]?.taken).toContain('sea level')
  })

  it('follows the standard atmosphere at an altitude', () => {
    const place = resolvePlace({ altitude: altitude(5_000) })
    // US Standard Atmosphere 1976 by its equation 33a: 24.90 inHg at 5000 ft.
    expect(place.barometerPa / 3_386.388_64).toBeCloseTo(24.9, 2)
    expect(place.assumptions.map(({ field }) => field)).toEqual(['barometer'])
    expect(place.sources.map((source) => source.id)).toEqual([
      'us-standard-atmosphere-1976',
      'weather',
    ])
  })

  it('carries the uncertainty of the altitude', () => {
    const place = resolvePlace({ altitude: quantity('altitude', 5_000, 'ft', 300) })
    const [low, high] = [5_300, 4_700].map(
      (feet) => resolvePlace({ altitude: altitude(feet) }).barometerPa,
    )
    // beside the 3 kPa of weather
    const ofAltitude = ((high ?? 0) - (low ?? 0)) / 2
    expect(place.plusMinusPa).toBeCloseTo(Math.hypot(ofAltitude, 3_000), 6)
    expect(resolvePlace({ altitude: altitude(5_000) }).plusMinusPa).toBe(3_000)
  })

  it('is the barometer given, before the altitude, with its uncertainty', () => {
    const place = resolvePlace({ altitude: altitude(5_000), barometer: barometer(25, 0.1) })
    expect(place.barometerPa).toBeCloseTo(84_659.7, 0)
    expect(place.plusMinusPa).toBeCloseTo(338.6, 0)
    expect(place.warnings).toEqual([])
  })

  it('warns of a barometer reduced to sea level', () => {
    const { barometerPa, warnings } = resolvePlace({
      altitude: altitude(5_000),
      barometer: barometer(29.92),
    })
    expect(barometerPa).toBeCloseTo(101_320.7, 0)
    expect(warnings.map((warning) => warning.code)).toEqual(['barometer-contradicts-altitude'])
    expect(warnings[0]?.message).toContain('84.3 kPa')
  })

  it('lets weather move the barometer by 3 kPa without a warning', () => {
    const standard = resolvePlace({ altitude: altitude(1_000) }).barometerPa
    const at = (shift: number) =>
      resolvePlace({
        altitude: altitude(1_000),
        barometer: quantity('barometricPressure', standard + shift, 'Pa'),
      }).warnings.length
    expect([at(2_990), at(-2_990), at(3_010), at(-3_010)]).toEqual([0, 0, 1, 1])
  })

  it.each([
    ['a barometer of nearly nothing', { barometer: barometer(1) }, 'barometer'],
    ['a barometer of a pressure vessel', { barometer: barometer(60) }, 'barometer'],
    ['an altitude in the stratosphere', { altitude: altitude(60_000) }, 'altitude'],
  ])('refuses %s', (_, place, field) => {
    const refusal = refusalOf(() => resolvePlace(place))
    expect(refusal).toMatchObject({ code: 'out-of-range', path: [field] })
  })
})

describe('an altitude that is refused', () => {
  it('is named as it was written', () => {
    expect(() => resolvePlace({ altitude: altitude(60_000) })).toThrow('60000 ft (18288 m)')
  })
})
