import { describe, expect, it } from 'vitest'
import data from '../../data/service/performance-tables.json' with { type: 'json' }
import { moistAir } from '../../shared/physics/moist-air.ts'
import { quantity, SEA_LEVEL_PA } from '../../shared/quantity/index.ts'
import { refrigerant, saturationPressure } from '../../shared/refrigerant/index.ts'
import { PERFORMANCE_TABLES } from '../../shared/service/cooling-check/tables.ts'

const r134a = refrigerant('R-134a')
const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
const psig = (pascal: number | undefined) =>
  quantity('gaugePressure', pascal ?? Number.NaN, 'Pa g').to('psig')
const table = (id: string) => PERFORMANCE_TABLES.find((entry) => entry.id === id)

/** `from to`, with one figure where one is printed. */
const span = (range: readonly number[] | undefined, unit: (si: number) => number) =>
  [...new Set((range ?? []).map((si) => Math.round(unit(si) * 10) / 10))].join(' ')
const gauge = (range: readonly number[] | undefined) => span(range, (pa) => psig(pa - SEA_LEVEL_PA))
const fahrenheit = (range: readonly number[] | undefined) =>
  span(range, (si) => quantity('temperature', si, 'K').to('°F'))

// Keyed again, whole printed figures: ambient °F: high side psig, low side psig.
const PRESSURES = {
  // US Army TM 5-3805-291-23-1, table 1, read again on 2026-11-25.
  'loader-1000-rpm':
    '70: 120 190, 10 20; 80: 140 210, 10 25; 90: 170 240, 15 30; 100: 190 270, 15 30; 110: 210 300, 15 30',
  // Chrysler Intrepid 2000.
  'passenger-car-closed':
    '70: 200 230, 15 25; 80: 210 250, 20 30; 90: 240 280, 25 35; 100: 280 320, 30 40; 110: 320 365, 35 45',
  // Nissan GT-R 2010, the same pressures for both humidities.
  'sports-car-idle-open-50-60-rh':
    '77: 175 213, 25 30; 86: 189 231, 28 35; 95: 218 264, 33 41; 104: 271 331, 42 52',
  'sports-car-idle-open-60-70-rh':
    '77: 175 213, 25 30; 86: 189 231, 28 35; 95: 218 264, 33 41; 104: 271 331, 42 52',
  // Takeuchi TL150; Ford Escort 1994: one pair for all weather, 70 to 110 °F by the other tables.
  'compact-loader-any-ambient': '70: 150 280, 15 30; 110: 150 280, 15 30',
  'compact-car-any-ambient': '70: 178 235, 35 50; 110: 178 235, 35 50',
  // Toyota 1991.
  'passenger-car-r12': '80: 150 170, 15 30; 100: 210 230, 15 30',
} as const

// The same, vent °F by the air going in, °F.
const VENTS: Readonly<Record<string, string>> = {
  'passenger-car-closed': '70: 42; 80: 45; 90: 50; 100: 54; 110: 59',
  'sports-car-idle-open-50-60-rh': '68: 43 46; 77: 47 52; 86: 58 64',
  'sports-car-idle-open-60-70-rh': '68: 45 48; 77: 52 57; 86: 64 69',
}

const degrees = (line: string) => [...line.matchAll(/(\d+):/gu)].map(([, at]) => Number(at))

describe('performance tables', () => {
  it.each(Object.entries(PRESSURES))('%s as printed: %s', (id, printed) => {
    const at = degrees(printed)
    const rows = at.map(
      (f) => `${f}: ${gauge(table(id)?.high(kelvin(f)))}, ${gauge(table(id)?.low(kelvin(f)))}`,
    )
    expect(rows.join('; ')).toBe(printed)
    // Nothing before the first row and behind the last.
    for (const beyond of [(at[0] ?? 0) - 1, (at.at(-1) ?? 0) + 1]) {
      expect(table(id)?.high(kelvin(beyond))).toBeUndefined()
    }
  })

  it.each(Object.entries(VENTS))('%s: vent as printed: %s', (id, printed) => {
    const rows = degrees(printed).map((f) => `${f}: ${fahrenheit(table(id)?.vent(kelvin(f)))}`)
    expect(rows.join('; ')).toBe(printed)
  })

  it('are no others, and each is for the machine, the refrigerant and the test of its page', () => {
    const heads = data.rows.map((row) =>
      [row.id, row.source, row.machine, row.refrigerant, row.air, row.windows, row.engine]
        .concat(row.humidity ?? [])
        .filter((word) => word !== undefined)
        .join(' '),
    )
    expect(heads).toEqual([
      'loader-1000-rpm tm-5-3805-291-23-1 off-road R-134a about-1000-rpm',
      'passenger-car-closed large-sedan-2000 road-vehicle R-134a recirculated closed about-1000-rpm',
      'sports-car-idle-open-50-60-rh sports-car-2010 road-vehicle R-134a recirculated open idle 50 % 60 %',
      'sports-car-idle-open-60-70-rh sports-car-2010 road-vehicle R-134a recirculated open idle 60 % 70 %',
      'compact-loader-any-ambient loader-cooling off-road R-134a',
      'compact-car-any-ambient small-car-1994 road-vehicle R-134a',
      'passenger-car-r12 car-1991 road-vehicle R-12',
    ])
    for (const { id } of data.rows) {
      expect(table(id)?.oneVentFigure).toBe(id in VENTS ? id === 'passenger-car-closed' : true)
    }
  })

  // Ford Mustang 1993 (prints ranges), GM 1987, VW 1996: clutch cycling switches.
  it.each([
    ['orifice-tube-1993', '22 28', '40 47', 'cycling-switch-1993'],
    ['orifice-tube-1987', '25', '46', 'cycling-clutch-1987'],
    ['pressure-switch-1996', '17.4', '34.8', 'pressure-switches-1996'],
  ])('%s opens at %s psig and closes at %s psig', (id, opens, closes, source) => {
    const switches = data.clutch.map((row) => ({
      ...row,
      opens: row.opens.join(' ').replaceAll(' psig', ''),
      closes: row.closes.join(' ').replaceAll(' psig', ''),
    }))
    expect(switches).toHaveLength(3)
    expect(switches.find((row) => row.id === id)).toMatchObject({ opens, closes, source })
  })

  // Dodge 1983: two cycles a minute and more are normal at 68 to 90 °F. GM 2001 to 2005: wait 2 minutes.
  it('has the printed cycling rate, and the wait before a pressure at rest is read', () => {
    expect(data.cycles).toMatchObject({ from: '68 °F', to: '90 °F', perMinute: 2 })
    expect(data.static).toMatchObject({
      refrigerant: 'R-134a',
      wait: '2 min',
      rows: [
        { above: '60 °F', both: '50 psig' },
        { above: '75 °F', both: '70 psig' },
        { above: '90 °F', both: '100 psig' },
      ],
    })
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
    const found = psig(saturationPressure(r134a, kelvin(fahrenheit), 'bubble') - SEA_LEVEL_PA)
    expect(found).toBeGreaterThan(least)
    expect(found).toBeLessThan(least + 10)
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
