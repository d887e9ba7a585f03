import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type InstrumentClasses, reader } from '../../../shared/instrument/index.ts'
import { newNotes } from '../../../shared/notes.ts'
import { type Quantity, quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

/** Half-width of an error that stays within ±1, as expanded uncertainty: GUM 4.3.7, 2/√3. */
const LIMIT = 1.154_700_538
const PSI = 6_894.757
const FAHRENHEIT = 5 / 9

type ReadWith = Parameters<ReturnType<typeof reader>>[1]

const psig = (value: number) => quantity('gaugePressure', value, 'psig')
const warm = quantity('temperature', 20, '°C')
const kelvins = (value: number) => quantity('temperatureDifference', value, 'K')

/** One reading, with everything that was noted about it. */
function taking(classes: InstrumentClasses, reading: Quantity, readWith: ReadWith) {
  const notes = newNotes()
  const taken = reader(classes, notes)(reading, readWith, 'given')
  const ids = notes.sources.map(({ id }) => id)
  return { width: taken.plusMinus ?? Number.NaN, taken, ids, assumptions: notes.assumptions }
}

describe('a reading that a step takes', () => {
  it('has its instrument’s default, with the assumption and the source noted once', () => {
    const { width, ids, assumptions } = taking({}, psig(30), 'low-side-gauge')
    expect(width / PSI).toBeCloseTo(1, 4)
    expect(ids).toEqual(['shop-gauges'])
    expect(assumptions).toHaveLength(1)
    expect(assumptions[0]).toMatchObject({ field: 'given', short: 'low-side gauge ±1 psi' })
    expect(assumptions[0]?.taken).toContain('1 psi')
  })

  it.each([0, 3])('keeps a ± of its own, whatever class is given: ±%d psi', (plusMinus) => {
    const own = quantity('gaugePressure', 30, 'psig', plusMinus)
    const { taken, ids, assumptions } = taking({ lowGauge: 'within-7-psi' }, own, 'low-side-gauge')
    expect(taken).toBe(own)
    expect([...ids, ...assumptions]).toEqual([])
  })

  it('may be missing, and is then noted nowhere', () => {
    const notes = newNotes()
    expect(reader({}, notes)(undefined, 'scale', 'recovered')).toBeUndefined()
    expect(notes).toEqual(newNotes())
  })

  it('finds its gauge by the reading where the side is not known', () => {
    expect(taking({}, psig(60), 'a-gauge').width / PSI).toBeCloseTo(1, 4)
    expect(taking({}, psig(400), 'a-gauge').width / PSI).toBeCloseTo(4, 4)
    const deep = quantity('absolutePressure', 1_000, 'micron')
    expect(taking({}, deep, 'a-gauge').width / 0.133_322).toBeCloseTo(100, 2)
    expect(taking({ lowGauge: 'within-3.5-psi' }, psig(60), 'a-gauge').ids).toEqual([
      'ra3.2-gauges',
    ])
    expect(taking({ lowGauge: 'within-3.5-psi' }, deep, 'a-gauge').ids).toEqual([
      'shop-micron-gauge',
    ])
  })
})

describe('a class of instrument', () => {
  const classes = {
    lowGauge: 'within-0.5-psi',
    highGauge: 'within-7-psi',
    thermometer: 'within-0.5-k',
  }

  it('overrides the default of its own instrument, assumes nothing, and names its source', () => {
    const low = taking(classes, psig(30), 'low-side-gauge')
    expect(low.width / PSI).toBeCloseTo(0.5 * LIMIT, 5)
    expect(low.ids).toEqual(['sae-j3023-instruments'])
    expect(low.assumptions).toEqual([])
    const high = taking(classes, psig(300), 'high-side-gauge')
    expect(high.width / PSI).toBeCloseTo(7 * LIMIT, 4)
    expect(high.ids).toEqual(['ra3.2-gauges'])
    for (const sensor of ['thermometer', 'pipe-probe'] as const) {
      expect(taking(classes, warm, sensor).width).toBeCloseTo(0.5 * LIMIT, 8)
    }
  })

  it('says nothing of an instrument that it is not of', () => {
    expect(
      taking({ lowGauge: 'within-0.5-psi' }, psig(300), 'high-side-gauge').width / PSI,
    ).toBeCloseTo(4, 4)
    expect(
      taking({ highGauge: 'within-7-psi' }, psig(30), 'low-side-gauge').width / PSI,
    ).toBeCloseTo(1, 4)
    expect(taking(classes, quantity('mass', 1, 'kg'), 'scale').width).toBeCloseTo(0.015, 12)
    expect(taking(classes, quantity('length', 9, 'mm'), 'caliper').width).toBeCloseTo(2e-4, 12)
  })

  it('takes the span of its own side', () => {
    const spans = {
      lowGauge: 'en-837-1-class-1',
      lowGaugeSpan: quantity('pressureDifference', 100, 'psi'),
      highGauge: 'en-837-1-class-1',
      highGaugeSpan: quantity('pressureDifference', 500, 'psi'),
    }
    expect(taking(spans, psig(30), 'low-side-gauge').width / PSI).toBeCloseTo(LIMIT, 4)
    expect(taking(spans, psig(300), 'high-side-gauge').width / PSI).toBeCloseTo(5 * LIMIT, 4)
  })

  it.each([
    ['lowGauge', 'low-side-gauge', psig(30)],
    ['highGauge', 'high-side-gauge', psig(30)],
    ['thermometer', 'thermometer', warm],
    ['thermometer', 'pipe-probe', warm],
  ] as const)(
    'is refused by the name of its field when unknown: %s',
    (field, readWith, reading) => {
      const error = refusalOf(() => taking({ [field]: 'class-of-1910' }, reading, readWith))
      expect(error).toMatchObject({ code: 'unknown-name', path: [field] })
      expect(error.message).toContain('class-of-1910')
    },
  )
})

describe('the contact of a pipe probe', () => {
  it('adds in quadrature to the class of the sensor, on a pipe only', () => {
    const classes = { thermometer: 'within-0.5-k', contactError: kelvins(1.2) }
    const pipe = taking(classes, warm, 'pipe-probe')
    expect(pipe.width).toBeCloseTo(LIMIT * 1.3, 8) // 0.5, 1.2 and 1.3 make a right angle
    expect(pipe.assumptions).toEqual([])
    expect(taking(classes, warm, 'thermometer').width).toBeCloseTo(LIMIT * 0.5, 8)
  })

  it('adds to a shop thermometer, which is noted as assumed, where no class is given', () => {
    const { width, ids, assumptions } = taking({ contactError: kelvins(2) }, warm, 'pipe-probe')
    expect(width).toBeCloseTo(Math.hypot(FAHRENHEIT, 2 * LIMIT), 8)
    expect(ids).toEqual(['shop-thermometers'])
    expect(assumptions).toEqual([
      expect.objectContaining({ field: 'thermometer', short: 'thermometer ±1 °F' }),
    ])
  })

  it('leaves a shop thermometer where it is said to be perfect, and the probe’s ±2 °F where nothing is', () => {
    expect(taking({ contactError: kelvins(0) }, warm, 'pipe-probe').width).toBeCloseTo(
      FAHRENHEIT,
      8,
    )
    expect(taking({}, warm, 'pipe-probe').width).toBeCloseTo(2 * FAHRENHEIT, 8)
  })

  it('does not touch air, gauges, or a reading with a ± of its own', () => {
    const contactError = kelvins(3)
    expect(taking({ contactError }, warm, 'thermometer').width).toBeCloseTo(FAHRENHEIT, 8)
    expect(taking({ contactError }, psig(30), 'low-side-gauge').width / PSI).toBeCloseTo(1, 4)
    expect(taking({ contactError }, warm.within(0.1), 'pipe-probe').width).toBe(0.1)
  })

  it('cannot be below zero, whatever is read', () => {
    for (const reading of [warm, warm.within(1), psig(30)]) {
      const error = refusalOf(() => taking({ contactError: kelvins(-1) }, reading, 'thermometer'))
      expect(error).toMatchObject({ code: 'out-of-range', path: ['contactError'] })
    }
  })

  it('never makes a pipe better known than the air by the same sensor', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (error) => {
        const classes = { thermometer: 'iec-60751-class-b', contactError: kelvins(error) }
        const pipe = taking(classes, warm, 'pipe-probe').width
        expect(pipe).toBeGreaterThanOrEqual(taking(classes, warm, 'thermometer').width)
        expect(pipe).toBeGreaterThanOrEqual(error * LIMIT * (1 - 1e-9))
      }),
    )
  })
})
