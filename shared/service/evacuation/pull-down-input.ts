import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Hose } from '../../physics/hose.ts'
import { type PressureReading, type Quantity, toAbsolute } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { PumpLine } from './pull-down.ts'

export interface PullDownInput {
  readonly temperature?: Quantity<'temperature'> | undefined
  readonly volume?: Quantity<'volume'> | undefined
  readonly pumpDisplacement?: Quantity<'volumeFlow'> | undefined
  readonly pumpUltimate?: PressureReading | undefined
  readonly startPressure?: PressureReading | undefined
  readonly target?: PressureReading | undefined
  readonly hoseLength?: Quantity<'length'> | undefined
  readonly hoseBore?: Quantity<'length'> | undefined
  readonly hoses?:
    | readonly { readonly length: Quantity<'length'>; readonly bore: Quantity<'length'> }[]
    | undefined
  readonly waterMass?: Quantity<'mass'> | undefined
}

/** Common practice: the vacuum that service texts aim at. */
const TARGET_PA = 66.661
/** Where no temperature is given. */
export const ROOM_K = 294.26

/** Pump and hoses, with what is taken where nothing was given. */
export function lineOf(
  input: PullDownInput,
  displacement: Quantity<'volumeFlow'>,
  barometerPa: number,
  notes: Notes,
): PumpLine {
  plausible(displacement, 1e-7, 1, 'A pump displacement', ['pumpDisplacement'])
  const ultimate = input.pumpUltimate
  if (!ultimate) {
    notes.assumptions.push({
      field: 'pumpUltimate',
      taken: 'a pump that ends at nothing',
      because: 'its ultimate pressure was not given: the time is a least time',
    })
  }
  const temperatureK = input.temperature?.si ?? ROOM_K
  if (!input.temperature) {
    notes.assumptions.push({
      field: 'temperature',
      taken: '70 °F (21 °C) for the flow through the hoses',
      because: 'no temperature was given',
    })
  }
  return {
    displacement: displacement.si,
    ultimatePa: ultimate ? under('pumpUltimate', () => toAbsolute(ultimate, barometerPa)).si : 0,
    hoses: hosesOf(input, notes),
    temperatureK,
  }
}

function hosesOf({ hoses, hoseLength, hoseBore }: PullDownInput, notes: Notes): readonly Hose[] {
  if (hoses && hoses.length > 0) {
    return hoses.map(({ length, bore }, index) => ({
      lengthM: plausible(length, 0.01, 1_000, 'A hose length', ['hoses', index, 'length']).si,
      boreM: plausible(bore, 0.5e-3, 0.5, 'A hose bore', ['hoses', index, 'bore']).si,
    }))
  }
  if (!hoseLength && !hoseBore) {
    notes.assumptions.push({
      field: 'hoses',
      taken: 'the pump straight on the system',
      because: 'no hose was given; a hose of 1/4 in bore makes it several times slower',
    })
    return []
  }
  if (!hoseLength || !hoseBore) {
    throw new CalcError('missing-input', 'A hose needs both its length and its bore.', {
      path: [hoseLength ? 'hoseBore' : 'hoseLength'],
      hint: 'Measure it: a common charging hose is 6 ft long with a bore near 1/4 in or less.',
    })
  }
  return [
    {
      lengthM: plausible(hoseLength, 0.01, 1_000, 'A hose length', ['hoseLength']).si,
      boreM: plausible(hoseBore, 0.5e-3, 0.5, 'A hose bore', ['hoseBore']).si,
    },
  ]
}

/** @throws {CalcError} `missing-input` without the internal volume. */
export function volumeOf({ volume }: PullDownInput): Quantity<'volume'> {
  if (volume) return plausible(volume, 1e-6, 1_000, 'An internal volume', ['volume'])
  throw new CalcError('missing-input', 'The pump-down time needs the internal volume.', {
    path: ['volume'],
    hint: 'Give the internal volume of the system and the hoses, from the maker or measured.',
  })
}

/** Pressure to pump down to, Pa. */
export function targetOf({ target }: PullDownInput, barometerPa: number, notes: Notes): number {
  if (target) return under('target', () => toAbsolute(target, barometerPa)).si
  notes.assumptions.push({
    field: 'target',
    taken: '500 micron',
    because: 'no target was given; common practice in the trade',
  })
  return TARGET_PA
}
