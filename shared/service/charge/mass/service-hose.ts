import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { holdUp, hoseVolume } from '../../../physics/hose.ts'
import { combine, type Tied, tied } from '../../../quantity/index.ts'
import type { ChargeInput } from '../input/fields.ts'
import { absolutePa, type Setting } from '../space/setting.ts'
import { massOf, volumeOf } from './shown.ts'

/**
 * Refrigerant that the charging hose keeps, kg: π/4 · bore² · length × (density at the end − at the
 * start), saturated at ambient. Negative when a full hose ends with vapour.
 *
 * @returns undefined when nothing is said of the hose.
 * @throws {CalcError} `missing-input` when only part of it is given.
 */
export function serviceHoseHoldUp(setting: Setting, input: ChargeInput): Tied | undefined {
  const { serviceHoseBore, serviceHoseLength, serviceHoseHolds, serviceHoseStarts } = input
  const { ambient, serviceHosePressure } = input
  const { r, notes } = setting
  if (!serviceHoseBore && !serviceHoseLength && !serviceHoseHolds && !serviceHoseStarts) {
    notes.assumptions.push({ field: 'serviceHoseLength', ...data.assumptions['hose-left-out'] })
    return undefined
  }
  if (!serviceHoseBore) throw missing('serviceHoseBore', 'Write it like 1/4 in or 6 mm.')
  if (!serviceHoseLength) throw missing('serviceHoseLength', 'Write it like 72 in or 1.8 m.')
  if (!serviceHoseHolds) {
    throw missing('serviceHoseHolds', 'liquid or vapour: what fills the hose when charging ends.')
  }
  if (!ambient) {
    throw missing('ambient', 'The hose is as warm as the air: write it like 75 °F.')
  }
  const start = serviceHoseStarts ?? 'empty'
  if (serviceHoseStarts === undefined) {
    notes.assumptions.push({ field: 'serviceHoseStarts', ...data.assumptions['hose-evacuated'] })
  }
  const [bore, long] = [tied(serviceHoseBore, 'hose bore'), tied(serviceHoseLength, 'hose length')]
  const ends =
    serviceHosePressure && serviceHoseHolds === 'vapour'
      ? [absolutePa(setting, serviceHosePressure, 'hose pressure')]
      : []
  const held = combine(
    [bore, long, tied(ambient, 'air temperature'), ...ends],
    (boreM = 0, lengthM = 0, kelvin = 0, pressurePa) =>
      holdUp(
        r,
        { boreM, lengthM },
        kelvin,
        { holds: start },
        { holds: serviceHoseHolds, pressurePa },
      ),
  )
  notes.steps.push({
    what: 'Refrigerant that stays in the service hose',
    formula: 'π/4 × bore² × length × (density when charging ends − when it starts)',
    values: {
      bore: serviceHoseBore,
      length: serviceHoseLength,
      volume: volumeOf(
        combine([bore, long], (boreM = 0, lengthM = 0) => hoseVolume({ boreM, lengthM })),
      ),
      'at the end': named(serviceHoseHolds),
      'at the start': named(start),
    },
    gives: massOf(held),
  })
  return held
}

const named = (holds: string) => (holds === 'empty' ? 'empty' : `saturated ${holds} at ambient`)

const missing = (field: string, hint: string) =>
  new CalcError('missing-input', `For the hold-up of the hose ${field} is needed.`, {
    path: [field],
    hint,
  })
