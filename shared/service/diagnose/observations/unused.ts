import type { Warning } from '../../../operation.ts'
import { fillIn } from '../../../sentence.ts'
import type { DiagnoseInput } from '../input/fields.ts'
import { TEXTS } from '../verdict/texts.ts'

const { message, needs, instead } = TEXTS.unused

/** Readings that say something only beside another. */
const NEEDS = [
  ['recovered', 'labelCharge'],
  ['systemPressure', 'systemTemperature'],
  ['systemTemperature', 'systemPressure'],
  ['returnWetBulb', 'returnAir'],
] as const
/** Of two readings of one thing the second is used. */
const INSTEAD = [
  ['liquidPressure', 'dischargePressure'],
  ['returnWetBulb', 'relativeHumidity'],
] as const

/** Readings that went into nothing, and why: nobody should think that they counted. */
export function unusedInDiagnosis(input: DiagnoseInput): readonly Warning[] {
  const warning = (field: string, why: string, other: string): Warning => ({
    code: 'reading-not-used',
    message: fillIn(message, { field, why: fillIn(why, { other }) }),
  })
  return [
    ...NEEDS.filter(([field, other]) => input[field] && !input[other]).map(([field, other]) =>
      warning(field, needs, other),
    ),
    ...INSTEAD.filter(([field, other]) => input[field] && input[other]).map(([field, other]) =>
      warning(field, instead, other),
    ),
  ]
}
