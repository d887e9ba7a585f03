import { CalcError, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Hose } from '../../physics/hose.ts'
import { type Quantity, quantity, say } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { EvacuationInput } from './fields.ts'
import type { PumpLine } from './pull-down.ts'
import { sentences } from './sentences.ts'

/** Where no temperature is given. */
export const ROOM = quantity('temperature', 70, '°F')

/** Pump and hoses, with what is assumed where nothing was given. */
export function lineOf(
  input: EvacuationInput,
  displacement: Quantity<'volumeFlow'>,
  place: () => Place,
  notes: Notes,
): PumpLine {
  plausible(displacement, 1e-7, 1, 'A pump displacement', ['pumpDisplacement'])
  const ultimate = input.pumpUltimate
  if (!ultimate) {
    notes.assumptions.push({
      field: 'pumpUltimate',
      taken: 'a pump that goes down to nothing',
      because: 'its lowest pressure was not given: the time is a least time',
    })
  }
  if (!input.temperature) {
    notes.assumptions.push({
      field: 'temperature',
      taken: `${say(ROOM)} for the flow through the hoses`,
      because: 'no temperature was given',
    })
  }
  return {
    displacement: displacement.si,
    ultimatePa: ultimate
      ? under('pumpUltimate', () =>
          ultimate.kind === 'absolutePressure' ? ultimate : place().absolute(ultimate),
        ).si
      : 0,
    hoses: hosesOf(input, notes),
    temperatureK: (input.temperature ?? ROOM).si,
  }
}

type Path = readonly (string | number)[]

const hose = (
  length: Quantity<'length'>,
  bore: Quantity<'length'>,
  lengthPath: Path,
  borePath: Path,
): Hose => ({
  lengthM: plausible(length, 0.01, 1_000, 'A hose length', lengthPath).si,
  boreM: plausible(bore, 0.5e-3, 0.5, 'A hose bore', borePath).si,
})

function hosesOf(
  { vacuumHoses, vacuumHoseLength, vacuumHoseBore }: EvacuationInput,
  notes: Notes,
): readonly Hose[] {
  if (vacuumHoses && vacuumHoses.length > 0) {
    return vacuumHoses.map(({ length, bore }, index) =>
      hose(length, bore, ['vacuumHoses', index, 'length'], ['vacuumHoses', index, 'bore']),
    )
  }
  if (!vacuumHoseLength && !vacuumHoseBore) {
    notes.assumptions.push({
      field: 'vacuumHoses',
      taken: 'the pump straight on the system',
      because: sentences.assumed['no-hose'],
    })
    return []
  }
  if (!vacuumHoseLength || !vacuumHoseBore) {
    throw new CalcError('missing-input', 'A hose needs both its length and its bore.', {
      path: [vacuumHoseLength ? 'vacuumHoseBore' : 'vacuumHoseLength'],
      hint: sentences.assumed['measure-hose'],
    })
  }
  return [hose(vacuumHoseLength, vacuumHoseBore, ['vacuumHoseLength'], ['vacuumHoseBore'])]
}

/** @throws {CalcError} `missing-input` without the inner volume. */
export function volumeOf({ volume }: Pick<EvacuationInput, 'volume'>): Quantity<'volume'> {
  if (volume) return plausible(volume, 1e-6, 1_000, 'An inner volume', ['volume'])
  throw new CalcError('missing-input', 'The pump-down time needs the inner volume.', {
    path: ['volume'],
    hint: 'Give the inner volume of the system and the hoses, from the maker or measured.',
  })
}
