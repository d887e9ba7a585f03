import type { CautionId } from '../cautions.ts'
import { dangersOf } from '../dangers.ts'
import { isVehicle, type Machine } from '../fields/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'

/** In every answer to readings of a machine that runs. */
export const WHILE_RUNNING: readonly CautionId[] = [
  'pressure',
  'cold-burns',
  'first-aid-eyes',
  'maker-first',
  'local-rules',
]

interface Asked {
  readonly machine?: Machine | undefined
}

/** Surely no vehicle: a machine of which nothing was said may be one. */
export const isStationary = ({ machine }: Asked): boolean =>
  machine !== undefined && !isVehicle(machine)

/** Belts and an engine belong to a vehicle, and so does a charge that no pressure shows. */
export const runningCautions = (refrigerant: Refrigerant, asked: Asked): readonly CautionId[] =>
  isStationary(asked)
    ? dangersOf({ refrigerant, does: [] })
    : ['weigh-the-charge', ...dangersOf({ refrigerant, does: ['runs'] })]
