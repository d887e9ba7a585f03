import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cooledAir, humidityAt, moistAir } from '../../../shared/physics/moist-air.ts'
import { waterVapourPressure } from '../../../shared/physics/water.ts'
import { refusalOf } from '../../support/refusal.ts'

const SEA = 101_325
const C = (celsius: number) => celsius + 273.15

describe('moist air', () => {
  it('holds water by its partial pressure, another equation of vapour pressure than the library’s', () => {
    const celsius = fc.double({ min: 1, max: 50, noNaN: true })
    const humidity = fc.double({ min: 0.05, max: 1, noNaN: true })
    const pressure = fc.double({ min: 6e4, max: 1.1e5, noNaN: true })
    fc.assert(
      fc.property(celsius, humidity, pressure, (t, phi, p) => {
        const air = moistAir(C(t), phi, p)
        const vapour = phi * waterVapourPressure(C(t))
        // 0.621945: ratio of the molar masses, ASHRAE
        expect(air.humidityRatio / ((0.621945 * vapour) / (p - vapour))).toBeCloseTo(1, 2)
        expect(air.relativeHumidity).toBeCloseTo(phi, 6)
        // and vapour at its dew point is saturated
        expect(waterVapourPressure(air.dewPointK) / vapour).toBeCloseTo(1, 2)
        // 1.006 and 1.86 kJ/(kg·K), 2501 kJ/kg at 0 °C
        const enthalpy = 1006 * t + air.humidityRatio * (2_501_000 + 1860 * t)
        expect(Math.abs(air.enthalpy - enthalpy)).toBeLessThan(1)
        expect(air.wetBulbK).toBeLessThanOrEqual(C(t) + 1e-3)
        expect(air.wetBulbK).toBeGreaterThanOrEqual(air.dewPointK - 2e-3)
      }),
    )
  })

  it.each([
    [C(-40), 0.5, SEA],
    [C(70), 0.5, SEA],
    [300, 0.01, SEA],
    [300, 1, SEA],
    [300, 0.5, 20_000],
    [300, 0.5, 120_000],
  ])('is answered to the ends of its range: %d K, %d, %d Pa', (kelvin, humidity, pascal) => {
    expect(Number.isFinite(moistAir(kelvin, humidity, pascal).enthalpy)).toBe(true)
  })

  it.each([
    [C(-40.1), 0.5, SEA],
    [C(70.1), 0.5, SEA],
    [300, 0.0099, SEA],
    [300, 1.001, SEA],
    [300, 0.5, 19_990],
    [300, 0.5, 120_010],
  ])('and refused beyond it: %d K, %d, %d Pa', (kelvin, humidity, pascal) => {
    expect(refusalOf(() => moistAir(kelvin, humidity, pascal)).code).toBe('out-of-range')
  })

  it('is refused once more than half of the barometer would be vapour', () => {
    const kelvin = C(68)
    const full = waterVapourPressure(kelvin)
    expect(() => moistAir(kelvin, 0.98, 2 * full)).not.toThrow()
    expect(refusalOf(() => moistAir(kelvin, 1, 1.98 * full)).message).toContain('mostly steam')
  })
})

describe('cooled air', () => {
  const air = moistAir(C(30), 0.5, SEA)

  it('keeps its water down to its dew point, and is saturated below', () => {
    const dry = cooledAir(air, air.dewPointK + 1, SEA)
    expect(dry.humidityRatio).toBe(air.humidityRatio)
    expect(dry.relativeHumidity).toBeLessThan(1)
    const wet = cooledAir(air, C(8), SEA)
    expect(wet.relativeHumidity).toBeCloseTo(1, 6)
    expect(wet.humidityRatio).toBeCloseTo(moistAir(C(8), 1, SEA).humidityRatio, 9)
    expect(wet.enthalpy).toBeLessThan(dry.enthalpy)
    expect(wet.dryBulbK).toBe(C(8))
  })

  it('is refused outside the range of the air', () => {
    expect(refusalOf(() => cooledAir(air, C(-41), SEA)).code).toBe('out-of-range')
  })
})

describe('the humidity of air by its wet bulb', () => {
  it('is that of the air which has this wet bulb', () => {
    const celsius = fc.double({ min: -10, max: 50, noNaN: true })
    const humidity = fc.double({ min: 0.05, max: 1, noNaN: true })
    const pressure = fc.double({ min: 6e4, max: 1.1e5, noNaN: true })
    fc.assert(
      fc.property(celsius, humidity, pressure, (t, phi, p) => {
        const { wetBulbK } = moistAir(C(t), phi, p)
        // the library's wet bulb is good to a thousandth of a kelvin
        const found = humidityAt(C(t), Math.min(wetBulbK, C(t)), p)
        expect(Math.abs(found - phi)).toBeLessThan(2e-3)
        expect(found).toBeLessThanOrEqual(1)
      }),
    )
  })

  // The psychrometer's balance worked by hand (ASHRAE Fundamentals 2017, chapter 1, equation 33), with
  // the vapour pressure of IAPWS: W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*).
  it.each([
    [30, 20, SEA],
    [35, 24, SEA],
    [24, 17, 84_300],
  ])('at %d °C with a wet bulb of %d °C and %d Pa keeps the balance of heat', (t, wet, p) => {
    const saturated = waterVapourPressure(C(wet))
    const full = (0.621945 * saturated) / (p - saturated)
    const ratio =
      ((2501 - 2.326 * wet) * full - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet)
    const vapour = (p * ratio) / (0.621945 + ratio)
    expect(humidityAt(C(t), C(wet), p)).toBeCloseTo(vapour / waterVapourPressure(C(t)), 2)
  })

  it('is 100 % where both bulbs are one, and falls as the wet one does', () => {
    expect(humidityAt(C(25), C(25), SEA)).toBeCloseTo(1, 9)
    const falling = [24, 20, 16, 12].map((wet) => humidityAt(C(25), C(wet), SEA))
    expect(falling).toEqual(falling.toSorted((a, b) => b - a))
    expect(falling[0]).toBeLessThan(1)
  })

  it.each([
    ['warmer than the air', C(25), C(25.1), SEA, /No air has a wet bulb/u],
    ['of air drier than any', C(45), C(12), SEA, /No air has a wet bulb/u],
    ['colder than air that is met', C(-39.9), C(-40.1), SEA, /outside −40 to 70/u],
    ['of air that is too hot', C(70.1), C(50), SEA, /outside −40 to 70/u],
    ['at no barometer', C(25), C(20), 19_990, /outside 20 to 120 kPa/u],
  ])('is refused by a wet bulb %s', (_, dry, wet, p, says) => {
    const refused = refusalOf(() => humidityAt(dry, wet, p))
    expect(refused.code).toBe('out-of-range')
    expect(refused.message).toMatch(says)
  })

  it('is answered down to 1 %, and not below', () => {
    const driest = moistAir(C(40), 0.0101, SEA)
    expect(humidityAt(C(40), driest.wetBulbK + 2e-3, SEA)).toBeGreaterThanOrEqual(0.01)
    expect(refusalOf(() => humidityAt(C(40), driest.wetBulbK - 0.02, SEA)).code).toBe(
      'out-of-range',
    )
  })
})

describe('air cooled where it would be mostly steam', () => {
  it('keeps its water, since no saturation stands in its way', () => {
    const air = moistAir(C(69), 0.3, 40_000)
    expect(cooledAir(air, C(68), 40_000).humidityRatio).toBe(air.humidityRatio)
  })
})
