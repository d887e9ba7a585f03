import { describe, expect, it } from 'vitest'
import { gaugesIn } from '../../../shared/fields/index.ts'
import { reader } from '../../../shared/instrument/index.ts'
import { newNotes } from '../../../shared/notes.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const LIMIT = 2 / Math.sqrt(3)
const PSI = 6_894.757
const psig = (value: number) => quantity('gaugePressure', value, 'psig')
const span = (psi: number) => quantity('pressureDifference', psi, 'psi')

/** Largest error of the class in psi, of a reading in psig on a scale in psi. */
function limit(lowGauge: string, reading: number, scale?: number): number {
  const classes = { lowGauge, lowGaugeSpan: scale === undefined ? undefined : span(scale) }
  const taken = reader(classes, newNotes())(psig(reading), 'low-side-gauge', 'given')
  return (taken.plusMinus ?? Number.NaN) / LIMIT / PSI
}

describe('gauges in percent of their span', () => {
  // EN 837-1:1996, table 11: the class is the limit of permissible error in percent of span.
  it.each([0.1, 0.25, 0.6, 1, 1.6, 2.5, 4])('EN 837-1 class %d, all over the scale', (accuracy) => {
    for (const reading of [0, 10, 124, 126, 250, 374, 376, 490, 500]) {
      const found = limit(`en-837-1-class-${accuracy}`, reading, 500)
      expect(found / ((accuracy / 100) * 500)).toBeCloseTo(1, 4)
    }
  })

  // ASME B40.100, accuracy grades: percent of span in the middle half, and in the outer quarters.
  it.each([
    ['4a', 0.1, 0.1],
    ['3a', 0.25, 0.25],
    ['2a', 0.5, 0.5],
    ['1a', 1, 1],
    ['a', 1, 2],
    ['b', 2, 3],
    ['c', 3, 4],
    ['d', 5, 5],
  ] as const)('ASME B40.100 grade %s', (grade, middle, outer) => {
    const percent = (reading: number) => limit(`asme-b40.100-grade-${grade}`, reading, 200) / 2
    for (const reading of [50, 100, 150]) expect(percent(reading)).toBeCloseTo(middle, 4)
    for (const reading of [0, 49.9, 150.1, 200]) expect(percent(reading)).toBeCloseTo(outer, 4)
  })

  it('counts a vacuum from zero, as far as a pressure', () => {
    expect(limit('asme-b40.100-grade-a', -10, 120)).toBeCloseTo(0.02 * 120, 4)
  })

  it('needs the span', () => {
    for (const [side, instrument] of [
      ['lowGauge', 'low-side-gauge'],
      ['highGauge', 'high-side-gauge'],
    ] as const) {
      const take = reader({ [side]: 'en-837-1-class-1.6' }, newNotes())
      const error = refusalOf(() => take(psig(30), instrument, 'given'))
      expect(error).toMatchObject({ code: 'missing-input', path: [`${side}Span`] })
    }
  })

  it.each([
    ['a reading beyond the scale', 120.1, 120],
    ['a vacuum beyond it', -15, 14],
    ['a scale of nothing', 0, 0],
    ['a scale below nothing', 0, -5],
  ])('refuse %s', (_, reading, scale) => {
    const error = refusalOf(() => limit('en-837-1-class-1.6', reading, scale))
    expect(error).toMatchObject({ code: 'out-of-range', path: ['lowGaugeSpan'] })
  })

  it('take a reading at the end of the scale', () => {
    expect(limit('en-837-1-class-1', 120, 120)).toBeCloseTo(1.2, 4)
  })
})

describe('gauges within some psi', () => {
  // SAE J3023 (2018) asks ±0.5 and ±1.25 psi of a laboratory, California's RA3.2 ±3.5 and ±7 psi of a shop.
  it.each([0.5, 1.25, 3.5, 7])('±%d psi, without a span', (psi) => {
    expect(limit(`within-${psi}-psi`, 60)).toBeCloseTo(psi, 4)
    expect(limit(`within-${psi}-psi`, 5, 100)).toBeCloseTo(psi, 4)
  })
})

describe('the classes that a gauge may have', () => {
  it('are all checked above', () => {
    const known = gaugesIn.lowGauge.unwrap().options
    expect([...known].sort()).toEqual(
      [
        ...[0.1, 0.25, 0.6, 1, 1.6, 2.5, 4].map((accuracy) => `en-837-1-class-${accuracy}`),
        ...['4a', '3a', '2a', '1a', 'a', 'b', 'c', 'd'].map(
          (grade) => `asme-b40.100-grade-${grade}`,
        ),
        ...[0.5, 1.25, 3.5, 7].map((psi) => `within-${psi}-psi`),
      ].sort(),
    )
    expect(gaugesIn.highGauge.unwrap().options).toEqual(known)
  })
})
