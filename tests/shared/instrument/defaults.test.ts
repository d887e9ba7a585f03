import { describe, expect, it } from 'vitest'
import { gaugeFor, type InstrumentId, withInstrument } from '../../../shared/instrument/index.ts'
import { type Quantity, quantity } from '../../../shared/quantity/index.ts'

// The units by their definitions, not by the tables under test.
const PSI = 6_894.757
const FAHRENHEIT = 5 / 9
const MICRON = 0.133_322

const psig = (value: number, plusMinus?: number) =>
  quantity('gaugePressure', value, 'psig', plusMinus)
const micron = (value: number) => quantity('absolutePressure', value, 'micron')
const widthOf = (reading: Quantity, instrument: InstrumentId) =>
  withInstrument(reading, instrument, 'field').reading.plusMinus ?? Number.NaN

describe('what an instrument is known to, where nothing is said of it', () => {
  it.each([
    ['low-side-gauge', psig(30), PSI, '±1 psi', 'shop-gauges', 'common-practice'],
    ['high-side-gauge', psig(250), 4 * PSI, '±4 psi', 'shop-gauges', 'common-practice'],
    [
      'thermometer',
      quantity('temperature', 75, '°F'),
      FAHRENHEIT,
      '±1 °F',
      'shop-thermometers',
      'common-practice',
    ],
    [
      'pipe-probe',
      quantity('temperature', 45, '°F'),
      2 * FAHRENHEIT,
      '±2 °F',
      'shop-thermometers',
      'common-practice',
    ],
    ['scale', quantity('mass', 2, 'kg'), 0.015, '±15 g', 'shop-scale', 'secondary'],
    ['micron-gauge', micron(40), 10 * MICRON, '±10 micron', 'shop-micron-gauge', 'common-practice'],
    ['caliper', quantity('length', 12, 'mm'), 2e-4, '±0.2 mm', 'shop-caliper', 'common-practice'],
    [
      'barometer',
      quantity('barometricPressure', 1_000, 'hPa'),
      100,
      '±1 hPa',
      'shop-barometer',
      'common-practice',
    ],
    [
      'hygrometer',
      quantity('fraction', 45, '%'),
      0.05,
      '±5 %',
      'shop-hygrometer',
      'common-practice',
    ],
  ] as const)('%s', (instrument, reading, width, words, source, mark) => {
    const taken = withInstrument(reading, instrument, 'suctionPressure')
    expect((taken.reading.plusMinus ?? 0) / width).toBeCloseTo(1, 4)
    expect(taken.reading.si).toBe(reading.si)
    expect(taken.reading.kind).toBe(reading.kind)
    expect(taken.source).toMatchObject({ id: source, mark })
    expect(taken.assumption?.field).toBe('suctionPressure')
    const name = instrument.replace(/-(?=gauge$|probe$)/u, ' ')
    expect(taken.assumption?.short).toBe(`${name} ${words}`)
    expect(taken.assumption?.taken).toContain(`${name} ${words}`)
    expect(taken.assumption?.because).toMatch(/^no ± was given with the reading; \S/u)
  })

  it('is the larger of 10 micron and a tenth of the reading for a micron gauge', () => {
    const width = (reading: number) => widthOf(micron(reading), 'micron-gauge') / MICRON
    expect(width(99)).toBeCloseTo(10, 3)
    expect(width(101)).toBeCloseTo(10.1, 3)
    expect(width(500)).toBeCloseTo(50, 3)
    expect(width(5_000)).toBeCloseTo(500, 2)
    const { assumption } = withInstrument(micron(500), 'micron-gauge', 'vacuum')
    expect(assumption?.taken).toContain('±50 micron')
    expect(assumption?.short).toBe('micron gauge ±10 %')
  })

  it('does not grow with the reading for any other instrument', () => {
    expect(widthOf(psig(5), 'low-side-gauge')).toBe(widthOf(psig(200), 'low-side-gauge'))
    const weighed = (kilograms: number) => widthOf(quantity('mass', kilograms, 'kg'), 'scale')
    expect(weighed(0.1)).toBe(weighed(60))
  })

  it.each([0, 0.2, 7])('gives way to a ± of the reading itself: ±%d psi', (plusMinus) => {
    const taken = withInstrument(psig(30, plusMinus), 'low-side-gauge', 'suctionPressure')
    expect(taken).toEqual({ reading: psig(30, plusMinus) })
  })
})

describe('the gauge that a pressure was read with', () => {
  it.each([
    ['249.9 psig', psig(249.9), 'low-side-gauge'],
    ['250 psig', psig(250), 'low-side-gauge'],
    ['250.1 psig', psig(250.1), 'high-side-gauge'],
    ['0 psig', psig(0), 'low-side-gauge'],
    ['20 inHg vac', quantity('gaugePressure', 20, 'inHg vac'), 'low-side-gauge'],
    ['500 micron', micron(500), 'micron-gauge'],
    ['4999 Pa abs', quantity('absolutePressure', 4_999, 'Pa abs'), 'micron-gauge'],
    ['5000 Pa abs', quantity('absolutePressure', 5_000, 'Pa abs'), 'low-side-gauge'],
    ['3 kPa g', quantity('gaugePressure', 3, 'kPa g'), 'low-side-gauge'],
    ['60 psia', quantity('absolutePressure', 60, 'psia'), 'low-side-gauge'],
    ['300 psia', quantity('absolutePressure', 300, 'psia'), 'high-side-gauge'],
  ] as const)('%s', (_, reading, instrument) => {
    expect(gaugeFor(reading)).toBe(instrument)
  })
})
