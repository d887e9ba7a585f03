import { CalcError } from '../../../errors.ts'
import { DRY_AIR_GAS_CONSTANT } from '../../../gas-constants.ts'
import {
  absolutePressure,
  combine,
  mass,
  type Quantity,
  settle,
  type Tied,
  tied,
  total,
} from '../../../quantity/index.ts'
import type { ChargeInput } from '../input/fields.ts'
import type { Setting } from '../space/setting.ts'
import type { CouplingLoss } from './coupling.ts'
import { chargeSource } from './line-check.ts'
import { volumeOf } from './shown.ts'

interface AirLetIn {
  readonly mass: Quantity<'mass'>
  /** Share of the air in the pressure at rest; undefined without the space that it spreads over. */
  readonly partialPressure: Quantity<'absolutePressure'> | undefined
}

/**
 * Air let in on rejoining: inclusion volume × air density at the place, as an ideal gas.
 *
 * @returns undefined where no coupling's inclusion is given.
 */
export function airLetIn(
  setting: Setting,
  { ambient, vapourSpace }: ChargeInput,
  couplings: readonly CouplingLoss[],
): AirLetIn | undefined {
  const given = couplings.flatMap(({ air }) => air ?? [])
  if (given.length === 0) return undefined
  if (!ambient) {
    throw new CalcError('missing-input', 'The air temperature is needed for the air let in.', {
      path: ['ambient'],
      hint: 'Write it like 75 °F or 24 °C.',
    })
  }
  const { place, notes } = setting
  setting.usesPlace = true
  const volumeM3 = total(given)
  const warm = tied(ambient, 'air temperature')
  const taken = combine(
    [volumeM3, tied(place.barometer, place.barometer.name), warm],
    (cubic = 0, pascal = 0, kelvin = 1) => (cubic * pascal) / (DRY_AIR_GAS_CONSTANT * kelvin),
  )
  const { si, plusMinus } = settle(taken)
  const air = mass(si, plusMinus)
  notes.sources.push(chargeSource('dry-air'))
  notes.steps.push({
    what: 'Air let in on rejoining',
    formula:
      'inclusion volume × rejoinings × barometric pressure / (gas constant of air × temperature)',
    values: {
      volume: volumeOf(volumeM3),
      'barometric pressure': absolutePressure(place.barometerPa, place.plusMinusPa),
      temperature: ambient,
    },
    gives: air,
  })
  if (!vapourSpace || vapourSpace.si === 0) return { mass: air, partialPressure: undefined }
  const share = settle(spread(taken, warm, tied(vapourSpace, 'vapour space')))
  const partialPressure = absolutePressure(share.si, share.plusMinus)
  notes.steps.push({
    what: 'Pressure of that air in the system at rest',
    formula: 'mass of air × gas constant of air × temperature / space that vapour fills',
    values: { 'mass of air': air, 'vapour space': vapourSpace, temperature: ambient },
    gives: partialPressure,
  })
  return { mass: air, partialPressure }
}

const spread = (air: Tied, warm: Tied, space: Tied) =>
  combine(
    [air, warm, space],
    (kg = 0, kelvin = 0, cubic = 1) => (kg * DRY_AIR_GAS_CONSTANT * kelvin) / cubic,
  )
