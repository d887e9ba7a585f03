import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cooledAir, moistAir } from '../../../shared/physics/moist-air.ts'
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
