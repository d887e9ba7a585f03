import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import { HOSE_CONTENTS, type HoseContents } from '../../fields/index.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { fillingDensity, holdUp, hoseVolume } from '../../physics/hose.ts'
import { mass, propagate, quantity, quantityOut, say, volume } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { ChargingInput } from './fields.ts'

export const hoseOut = z.strictObject({
  volume: quantityOut.describe('Inner volume of the hose'),
  starts: z.enum(HOSE_CONTENTS).describe('What it held when the scale was read first'),
  holds: z.enum(HOSE_CONTENTS).describe('What it holds when it is taken off'),
  holdUp: quantityOut.describe(
    'What leaves the source and stays in the hose; negative: given back',
  ),
  fullOfLiquid: quantityOut.describe('What the hose would hold full of liquid'),
})

const ROOM = quantity('temperature', 77, '°F')

/** What the charging hose keeps; undefined when its size was not given. */
export function hoseOf(
  r: Refrigerant,
  input: ChargingInput,
  toleranceKg: number,
  place: Place,
  notes: Notes,
): Computed<z.output<typeof hoseOut>> | undefined {
  const { serviceHoseBore: bore, serviceHoseLength: long, supply } = input
  if (!bore && !long) {
    if (supply !== 'charging-machine') {
      notes.assumptions.push({
        field: 'serviceHoseBore',
        taken: 'nothing stays in the charging hose',
        short: 'nothing stays in the hose',
        because: 'bore and length were not given; a hose full of liquid can hold 2 oz and more',
      })
    }
    return undefined
  }
  if (!bore || !long) {
    throw new CalcError('missing-input', 'The hold-up of a hose takes its bore and its length.', {
      hint: 'Give both, such as 1/4 in and 72 in.',
      path: [bore ? 'serviceHoseLength' : 'serviceHoseBore'],
    })
  }
  const holds: HoseContents =
    input.serviceHoseHolds ?? (input.phase === 'vapour' ? 'vapour' : 'liquid')
  const starts: HoseContents = input.serviceHoseStarts ?? 'empty'
  const [temperature, readIn] = hoseTemperature(input, notes)
  const { serviceHosePressure } = input
  const own = serviceHosePressure
    ? under('serviceHosePressure', () => place.absolute(serviceHosePressure))
    : undefined
  const vapourAt = holds === 'vapour' ? own : undefined
  const space = hoseVolume({ boreM: bore.si, lengthM: long.si })
  const full = (contents: HoseContents) =>
    under(readIn, () => space * fillingDensity(r, { holds: contents }, temperature.si))
  const fullOfLiquid = full('liquid')
  const kept = under(vapourAt ? 'serviceHosePressure' : readIn, () =>
    propagate(
      [bore, long, temperature, ...(vapourAt ? [vapourAt] : [])],
      (boreM = 0, lengthM = 0, kelvin = 0, pressurePa) =>
        holdUp(r, { boreM, lengthM }, kelvin, { holds: starts }, { holds, pressurePa }),
    ),
  )
  if (input.serviceHoseHolds === undefined) {
    warnOfContents(holds, fullOfLiquid, full('vapour'), toleranceKg, notes)
  }
  const shown = mass(kept.si, kept.plusMinus)
  notes.steps.push({
    what: 'Hold-up of the hose',
    formula: 'π/4 × bore² × length × (density at the end − density at the start)',
    values: { bore, length: long, starts, holds, volume: volume(space) },
    gives: shown,
  })
  return { volume: volume(space), starts, holds, holdUp: shown, fullOfLiquid: mass(fullOfLiquid) }
}

function hoseTemperature({ sourceTemperature, ambient }: ChargingInput, notes: Notes) {
  if (sourceTemperature) return [sourceTemperature, 'sourceTemperature'] as const
  if (ambient) return [ambient, 'ambient'] as const
  notes.assumptions.push({
    field: 'sourceTemperature',
    taken: `a hose at ${say(ROOM)}`,
    because: 'no temperature of source or air was given',
  })
  return [ROOM, 'sourceTemperature'] as const
}

function warnOfContents(
  holds: HoseContents,
  liquidKg: number,
  vapourKg: number,
  toleranceKg: number,
  notes: Notes,
): void {
  notes.assumptions.push({
    field: 'serviceHoseHolds',
    taken: `a hose that ends up full of ${holds}`,
    because: 'it was not said what stays in it',
  })
  if (liquidKg - vapourKg <= toleranceKg) return
  notes.warnings.push({
    code: 'hose-state-matters',
    message: `Full of liquid the hose holds ${say(mass(liquidKg))}, full of vapour ${say(mass(vapourKg))}: the difference is more than the tolerance. See to it which one stays, and say so.`,
  })
}
