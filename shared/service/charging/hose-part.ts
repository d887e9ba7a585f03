import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  fillingDensity,
  HOSE_CONTENTS,
  type HoseContents,
  holdUp,
  hoseVolume,
} from '../../physics/hose.ts'
import { mass, quantity, quantityOut, say, toAbsolute, volume } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { ChargingInput } from './fields.ts'

export const hoseOut = z.strictObject({
  volume: quantityOut,
  atStart: z.enum(HOSE_CONTENTS),
  atEnd: z.enum(HOSE_CONTENTS),
  holdUp: quantityOut.describe(
    'What leaves the source and stays in the hose; negative: given back',
  ),
  fullOfLiquid: quantityOut.describe('What the hose would hold full of liquid'),
})

const ROOM_K = quantity('temperature', 77, '°F').si

/** What the charging hose keeps; undefined when its size was not given. */
export function hoseOf(
  r: Refrigerant,
  input: ChargingInput,
  toleranceKg: number,
  barometerPa: number,
  notes: Notes,
): Computed<z.output<typeof hoseOut>> | undefined {
  const { hoseBore, hoseLength, supply } = input
  if (!hoseBore && !hoseLength) {
    if (supply !== 'charging-machine') {
      notes.assumptions.push({
        field: 'hoseBore',
        taken: 'nothing stays in the charging hose',
        because: 'bore and length were not given; a hose full of liquid can hold 2 oz and more',
      })
    }
    return undefined
  }
  if (!hoseBore || !hoseLength) {
    throw new CalcError('missing-input', 'The hold-up of a hose takes its bore and its length.', {
      hint: 'Give both, such as 1/4 in and 72 in.',
      path: [hoseBore ? 'hoseLength' : 'hoseBore'],
    })
  }
  const atEnd: HoseContents = input.hoseAtEnd ?? (input.phase === 'vapour' ? 'vapour' : 'liquid')
  const atStart: HoseContents = input.hoseAtStart ?? 'evacuated'
  const reading = input.sourceTemperature ?? input.outdoorTemperature
  const readIn =
    input.outdoorTemperature && !input.sourceTemperature
      ? 'outdoorTemperature'
      : 'sourceTemperature'
  if (!reading) {
    notes.assumptions.push({
      field: 'sourceTemperature',
      taken: 'a hose at 77 °F (25 °C)',
      because: 'no temperature of source or air was given',
    })
  }
  const temperatureK = reading?.si ?? ROOM_K
  const { hosePressure } = input
  const vapourPa = hosePressure
    ? under('hosePressure', () => toAbsolute(hosePressure, barometerPa).si)
    : undefined
  const hose = { boreM: hoseBore.si, lengthM: hoseLength.si }
  const space = hoseVolume(hose)
  const holds = (state: HoseContents) => space * fillingDensity(r, { holds: state }, temperatureK)
  const full = under(readIn, () => holds('liquid'))
  const end = { holds: atEnd, pressurePa: vapourPa }
  const holdUpKg = under('hosePressure', () =>
    holdUp(r, hose, temperatureK, { holds: atStart }, end),
  )
  if (input.hoseAtEnd === undefined) {
    notes.assumptions.push({
      field: 'hoseAtEnd',
      taken: `a hose that ends up full of ${atEnd}`,
      because: 'it was not said what stays in it',
    })
    if (full - holds('vapour') > toleranceKg) {
      notes.warnings.push({
        code: 'hose-state-matters',
        message: `Full of liquid the hose holds ${say(mass(full))}, full of vapour ${say(mass(holds('vapour')))}: the difference is more than the tolerance. See to it which one stays, and say so.`,
      })
    }
  }
  notes.steps.push({
    what: 'Hold-up of the hose',
    formula: 'π/4 × bore² × length × (density at the end − density at the start)',
    values: { hoseBore, hoseLength, atStart, atEnd, volume: volume(space) },
    gives: mass(holdUpKg),
  })
  return {
    volume: volume(space),
    atStart,
    atEnd,
    holdUp: mass(holdUpKg),
    fullOfLiquid: mass(full),
  }
}
