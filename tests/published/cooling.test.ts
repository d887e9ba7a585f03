import { describe, expect, it } from 'vitest'
import { moistAir } from '../../shared/physics/moist-air.ts'
import { quantity, SEA_LEVEL_PA } from '../../shared/quantity/index.ts'
import { refrigerant, saturationPressure } from '../../shared/refrigerant/index.ts'
import { PERFORMANCE_TABLES } from '../../shared/service/cooling-check/tables.ts'

const r134a = refrigerant('R-134a')
const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
const psig = (pascal: number | undefined) =>
  quantity('gaugePressure', pascal ?? Number.NaN, 'Pa g').to('psig')
const table = (id: string) => PERFORMANCE_TABLES.find((entry) => entry.id === id)

describe('performance tables', () => {
  // US Army TM 5-3805-291-23-1, table 1, read again on 2026-11-25.
  it.each([
    [70, 120, 190, 10, 20],
    [80, 140, 210, 10, 25],
    [90, 170, 240, 15, 30],
    [100, 190, 270, 15, 30],
    [110, 210, 300, 15, 30],
  ])('prints the army loader row of %d °F', (ambient, highFrom, highTo, lowFrom, lowTo) => {
    const row = table('loader-1000-rpm')
    const found = [...(row?.high(kelvin(ambient)) ?? []), ...(row?.low(kelvin(ambient)) ?? [])]
    expect(found.map((pa) => Math.round(psig(pa - SEA_LEVEL_PA)))).toEqual([
      highFrom,
      highTo,
      lowFrom,
      lowTo,
    ])
  })

  // Suzuki Reno 2006: condensing at ambient + 34 to 40 °F; its example 90 °F, 130 °F, 200 psi.
  it('agrees with one maker’s example that 130 °F is about 200 psi', () => {
    const gauge = saturationPressure(r134a, kelvin(130), 'dew') - SEA_LEVEL_PA
    expect(Math.abs(psig(gauge) - 200)).toBeLessThan(2)
  })
})

describe('pressure at rest', () => {
  // Audi A6 2001, base pressure with the engine off, R-134a, bar gauge printed to 0.1 (the last ones are cut, not rounded).
  it.each([
    [15, 3.9],
    [20, 4.7],
    [25, 5.6],
    [30, 6.7],
    [35, 7.8],
    [40, 9.1],
    [45, 10.5],
  ])('is that of saturation at %d °C', (celsius, bar) => {
    const gauge = (saturationPressure(r134a, celsius + 273.15, 'bubble') - SEA_LEVEL_PA) / 1e5
    expect(Math.abs(gauge - bar)).toBeLessThan(0.1)
  })

  // GM 2001 to 2005: above 60 °F 50 psi, above 75 °F 70 psi, above 90 °F 100 psi: each just below saturation there.
  it.each([
    [60, 50],
    [75, 70],
    [90, 100],
  ])('lies above the published least at %d °F', (fahrenheit, least) => {
    const gauge = psig(saturationPressure(r134a, kelvin(fahrenheit), 'bubble') - SEA_LEVEL_PA)
    expect(gauge).toBeGreaterThan(least)
    expect(gauge).toBeLessThan(least + 10)
  })
})

describe('moist air', () => {
  // PsychroLib's documented example: 25 °C and 80 % has a dew point of 21.3094 °C.
  it('has the dew point that the library documents', () => {
    expect(moistAir(298.15, 0.8, 101_325).dewPointK - 273.15).toBeCloseTo(21.3094, 3)
  })

  // ASHRAE Fundamentals 2017, chapter 1, example 1, remembered and not read: 40 °C dry bulb, 20 °C wet bulb:
  // 14 %, 6.5 g/kg, 56.7 kJ/kg, 7 °C dew point.
  it('agrees with the handbook example as remembered, to its printed digits', () => {
    const air = moistAir(313.15, 0.14, 101_325)
    expect(air.wetBulbK - 273.15).toBeCloseTo(20, 0)
    expect(air.humidityRatio * 1000).toBeCloseTo(6.5, 0)
    expect(air.enthalpy / 1000).toBeCloseTo(56.7, 0)
    expect(air.dewPointK - 273.15).toBeCloseTo(7, 0)
  })
})
