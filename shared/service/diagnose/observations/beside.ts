import { CalcError } from '../../../errors.ts'
import { type Place, reader } from '../../../instrument/index.ts'
import type { Notes } from '../../../notes.ts'
import { type AtRest, atRest } from '../../../physics/at-rest.ts'
import type { Refrigerant } from '../../../refrigerant/index.ts'
import type { DiagnoseInput } from '../input/fields.ts'
import type { Kinds } from '../input/kinds.ts'
import type { BaselineRead } from '../posterior/candidates.ts'
import { observationsOf } from './observations.ts'
import { takenIn } from './taken.ts'

type Noted = Pick<Notes, 'assumptions' | 'sources' | 'warnings'>

/** The machine as it was read when it was sound; undefined where nothing of it can be used. */
export function baselineOf(
  input: DiagnoseInput,
  { modelRefrigerant }: Kinds,
  r: Refrigerant,
  place: Place,
  notes: Noted,
): BaselineRead | undefined {
  if (!input.baseline) return undefined
  const { running, weather } = takenIn(input.baseline, input, place, notes, 'baseline.')
  const observations = observationsOf(running, place, r, modelRefrigerant)
  return observations.length === 0
    ? undefined
    : { weather, observations, highFrom: running.highFrom }
}

/** The pressure at rest against saturation at its temperature, where both were read and can be compared. */
export function restEvidence(
  input: DiagnoseInput,
  r: Refrigerant,
  place: Place,
  notes: Noted,
): AtRest | undefined {
  const take = reader(input, notes)
  const pressure = take(input.systemPressure, 'a-gauge', 'systemPressure')
  const temperature = take(input.systemTemperature, 'thermometer', 'systemTemperature')
  if (!pressure || !temperature) return undefined
  try {
    return atRest(r, place.absolute(pressure), temperature)
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    notes.warnings.push({ code: 'rest-not-compared', message: error.message })
    return undefined
  }
}
