import type { Notes } from '../../notes.ts'
import type { Assumption } from '../../operation.ts'
import { type PressureReading, type Quantity, toAbsolute } from '../../quantity/index.ts'

const TEMPERATURE_K = 3
/** Half a scale division of a compound gauge, Pa, and the usual error of an electronic one. */
const DIAL_PA = 850
const ELECTRONIC_SHARE = 0.1

/** Expanded uncertainty of the level of vacuum readings, Pa: as stated, or by the kind of gauge. */
export function levelUncertainty(
  readings: readonly PressureReading[],
  barometerPa: number,
  field: string,
  notes: Notes,
): number {
  const stated = readings.flatMap(({ plusMinus }) => plusMinus ?? [])
  if (stated.length > 0) return Math.max(...stated)
  const dial = readings.some(({ kind }) => kind === 'gaugePressure')
  const highest = Math.max(...readings.map((reading) => toAbsolute(reading, barometerPa).si))
  take(notes, {
    field,
    taken: dial ? 'a compound gauge within ±0.25 inHg' : 'an electronic gauge within ±10 %',
    because: 'no uncertainty was given with it; write it as "650 ±30 micron"',
  })
  return dial ? DIAL_PA : ELECTRONIC_SHARE * highest
}

/** Expanded uncertainty of the temperature of the coldest part, K. */
export function temperatureUncertainty(
  { plusMinus }: Quantity<'temperature'>,
  notes: Notes,
): number {
  if (plusMinus !== undefined) return Math.min(plusMinus, 30)
  take(notes, {
    field: 'temperature',
    taken: '±5.4 °F (3 K)',
    because: 'no uncertainty was given, and the coldest part is seldom where it was measured',
  })
  return TEMPERATURE_K
}

/** Two parts of one answer may take the same thing: it is said once. */
function take(notes: Notes, assumption: Assumption): void {
  const said = notes.assumptions.some(
    ({ field, taken }) => field === assumption.field && taken === assumption.taken,
  )
  if (!said) notes.assumptions.push(assumption)
}
