import { describe, expect, it } from 'vitest'
import { thermometersIn } from '../../../shared/fields/index.ts'
import { reader } from '../../../shared/instrument/index.ts'
import { newNotes } from '../../../shared/notes.ts'
import { temperature } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const LIMIT = 2 / Math.sqrt(3)

/** Largest error of the class, K, at a temperature in °C. */
function limit(thermometer: string, celsius: number): number {
  const take = reader({ thermometer }, newNotes())
  const taken = take(temperature(celsius + 273.15), 'thermometer', 'given')
  return (taken.plusMinus ?? Number.NaN) / LIMIT
}

/** By its id: tolerance in K at t in °C as its standard writes it, and where that is defined, °C. */
const CLASSES: Readonly<Record<string, readonly [(t: number) => number, number, number]>> = {
  // IEC 60751: ±(a + b·|t|).
  'iec-60751-class-aa': [(t) => 0.1 + 0.0017 * Math.abs(t), -50, 250],
  'iec-60751-class-a': [(t) => 0.15 + 0.002 * Math.abs(t), -100, 450],
  'iec-60751-class-b': [(t) => 0.3 + 0.005 * Math.abs(t), -196, 600],
  'iec-60751-class-c': [(t) => 0.6 + 0.01 * Math.abs(t), -196, 600],
  // IEC 60584-1:2013: the greater of a fixed tolerance and a share of |t|.
  'iec-60584-type-k-class-1': [(t) => Math.max(1.5, 0.004 * Math.abs(t)), -40, 1000],
  'iec-60584-type-k-class-2': [(t) => Math.max(2.5, 0.0075 * Math.abs(t)), -40, 1200],
  'iec-60584-type-t-class-1': [(t) => Math.max(0.5, 0.004 * Math.abs(t)), -40, 350],
  'iec-60584-type-t-class-2': [(t) => Math.max(1, 0.0075 * Math.abs(t)), -40, 350],
  'iec-60584-type-j-class-1': [(t) => Math.max(1.5, 0.004 * Math.abs(t)), -40, 750],
  'iec-60584-type-j-class-2': [(t) => Math.max(2.5, 0.0075 * Math.abs(t)), -40, 750],
  // ASTM E230/E230M-12: as above, from 0 °C.
  'astm-e230-type-k-standard': [(t) => Math.max(2.2, 0.0075 * t), 0, 1260],
  'astm-e230-type-k-special': [(t) => Math.max(1.1, 0.004 * t), 0, 1260],
  'astm-e230-type-t-standard': [(t) => Math.max(1, 0.0075 * t), 0, 370],
  'astm-e230-type-t-special': [(t) => Math.max(0.5, 0.004 * t), 0, 370],
  'astm-e230-type-j-standard': [(t) => Math.max(2.2, 0.0075 * t), 0, 760],
  'astm-e230-type-j-special': [(t) => Math.max(1.1, 0.004 * t), 0, 760],
  // SAE J3023 (2018): the refrigerant within ±0.5 °C.
  'within-0.5-k': [() => 0.5, -40, 150],
}

describe.each(Object.entries(CLASSES))('%s', (id, [tolerance, from, to]) => {
  it('is its standard’s tolerance, cold and warm', () => {
    for (const share of [0.001, 0.1, 0.3, 0.6, 0.999]) {
      const celsius = from + share * (to - from)
      expect(limit(id, celsius)).toBeCloseTo(tolerance(celsius), 6)
    }
    if (from < 0) expect(limit(id, -0.9 * -from)).toBeCloseTo(tolerance(-0.9 * -from), 6)
    expect(limit(id, 10)).toBeCloseTo(tolerance(10), 6)
  })

  it('is refused outside the temperatures that it is defined for', () => {
    for (const celsius of [from - 0.1, to + 0.1]) {
      const error = refusalOf(() => limit(id, celsius))
      expect(error).toMatchObject({ code: 'out-of-range', path: ['thermometer'] })
      expect(error.message).toContain(`from ${from} to ${to} °C`)
    }
    expect(limit(id, from + 1e-6)).toBeGreaterThan(0)
    expect(limit(id, to - 1e-6)).toBeGreaterThan(0)
  })
})

describe('the classes that a thermometer may have', () => {
  it('are all checked above', () => {
    const known = thermometersIn.thermometer.unwrap().options
    expect([...known].sort()).toEqual(Object.keys(CLASSES).sort())
  })
})
