import { describe, expect, it } from 'vitest'
import { resolvePlace } from '../../../shared/instrument/index.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const altitude = (feet: number) => quantity('altitude', feet, 'ft')
const barometer = (inHg: number, plusMinus?: number) =>
  quantity('barometricPressure', inHg, 'inHg', plusMinus)

/** Pa that the weather may move a barometer to either side, and that a phone's may be off. */
const WEATHER = 3_000
const PHONE = 100

describe('the barometer of a place', () => {
  it('is sea level give or take the weather where nothing is given, and says so', () => {
    const place = resolvePlace({})
    expect(place.barometerPa).toBe(101_325)
    expect(place.plusMinusPa).toBe(WEATHER)
    expect(place.assumptions).toEqual([
      expect.objectContaining({
        field: 'altitude',
        taken: expect.stringMatching(/^sea level, 29\.92 inHg \(101\.325 kPa\).*3 kPa/u),
        short: 'sea level',
      }),
    ])
    expect(place.sources.map(({ id }) => id)).toEqual(['us-standard-atmosphere-1976', 'weather'])
    expect(place.warnings).toEqual([])
  })

  it('follows the standard atmosphere at an altitude, give or take the weather', () => {
    const place = resolvePlace({ altitude: altitude(5_000) })
    // US Standard Atmosphere 1976 by its equation 33a: 24.90 inHg at 5000 ft.
    expect(place.barometerPa / 3_386.388_64).toBeCloseTo(24.9, 2)
    expect(place.plusMinusPa).toBe(WEATHER)
    expect(place.assumptions).toEqual([
      expect.objectContaining({ field: 'barometer', taken: expect.stringContaining('3 kPa') }),
    ])
    expect(place.sources.map(({ id }) => id)).toEqual(['us-standard-atmosphere-1976', 'weather'])
    expect(place.warnings).toEqual([])
  })

  it.each([-900, 0, 1_524, 4_000])(
    'carries the uncertainty of the altitude beside the weather: %d m',
    (metres) => {
      const at = (si: number, plusMinus?: number) =>
        resolvePlace({ altitude: quantity('altitude', si, 'm', plusMinus) })
      const [low, high] = [at(metres + 90), at(metres - 90)].map((place) => place.barometerPa)
      const byAltitude = ((high ?? 0) - (low ?? 0)) / 2
      expect(at(metres, 90).plusMinusPa).toBeCloseTo(Math.hypot(byAltitude, WEATHER), 6)
      // The barometric formula's own slope, dp/dh = -g p / (R T): 1 part in 1000 over 180 m.
      const kelvins = 288.15 - 0.0065 * metres
      const slope = (9.806_65 * at(metres).barometerPa) / (287.053 * kelvins)
      expect(byAltitude / (90 * slope)).toBeCloseTo(1, 3)
      expect(at(metres, 0).plusMinusPa).toBe(WEATHER)
    },
  )

  it('is known to 1 hPa where its ± is not given, which is noted', () => {
    const place = resolvePlace({ barometer: barometer(29) })
    expect(place.plusMinusPa).toBeCloseTo(PHONE, 9)
    expect(place.assumptions).toEqual([
      expect.objectContaining({ field: 'barometer', short: 'barometer ±1 hPa' }),
    ])
    expect(place.sources.map(({ id }) => id)).toEqual(['shop-barometer'])
    const own = resolvePlace({ barometer: barometer(29, 0), altitude: altitude(800) })
    expect(own).toMatchObject({ plusMinusPa: 0, assumptions: [], warnings: [] })
    expect(own.sources.map(({ id }) => id)).toEqual(['us-standard-atmosphere-1976'])
  })

  it('is one ingredient under every reading', () => {
    const place = resolvePlace({ barometer: barometer(28, 0.1) })
    const { barometerPa: si, plusMinusPa: plusMinus } = place
    expect(place.barometer).toEqual({ name: 'barometer', si, plusMinus })
    expect(plusMinus).toBeGreaterThan(300)
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

describe('the edges of what a place may be', () => {
  it('are those of 11 km and of any weather', () => {
    const at = (pascals: number) =>
      resolvePlace({ barometer: quantity('barometricPressure', pascals, 'Pa') }).barometerPa
    for (const inside of [22_600, 115_000]) expect(at(inside)).toBe(inside)
    for (const outside of [22_590, 115_010]) {
      expect(refusalOf(() => at(outside)).code).toBe('out-of-range')
    }
    const up = (metres: number) =>
      resolvePlace({ altitude: quantity('altitude', metres, 'm') }).barometerPa
    expect(up(11_000)).toBeLessThan(22_640)
    expect(up(-1_000)).toBeGreaterThan(113_000)
    for (const outside of [11_001, -1_001]) {
      expect(refusalOf(() => up(outside))).toMatchObject({ path: ['altitude'] })
    }
  })

  it('hold for the altitude beside a barometer too', () => {
    const both = { altitude: altitude(60_000), barometer: barometer(25) }
    expect(refusalOf(() => resolvePlace(both))).toMatchObject({ path: ['altitude'] })
  })
})

describe('an altitude that is refused', () => {
  it('is named as it was written', () => {
    expect(() => resolvePlace({ altitude: altitude(60_000) })).toThrow('60000 ft (18288 m)')
  })
})
