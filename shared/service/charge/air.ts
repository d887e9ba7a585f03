import { CalcError } from '../../errors.ts'
import { DRY_AIR_GAS_CONSTANT } from '../../gas-constants.ts'
import type { Step } from '../../operation.ts'
import { absolutePressure, mass, type Quantity } from '../../quantity/index.ts'
import { combine, type Estimate, exactly, reading, settle } from './estimate.ts'
import { volumeQuantity } from './inventory.ts'
import { checkSource } from './line-check.ts'

interface AirTakenIn {
  readonly mass: Quantity<'mass'>
  /** Share of the air in the pressure at rest; undefined without the space that it spreads over. */
  readonly partialPressure: Quantity<'absolutePressure'> | undefined
  readonly steps: readonly Step[]
}

/** Air taken in on rejoining: inclusion volume × air density at the place, as an ideal gas. */
export function airTakenIn(
  volumeM3: Estimate,
  ambient: Quantity<'temperature'> | undefined,
  barometerPa: number,
  vapourSpace: Quantity<'volume'> | undefined,
): AirTakenIn {
  if (!ambient) {
    throw new CalcError('missing-input', 'The air temperature is needed for the air taken in.', {
      path: ['ambient'],
      hint: 'Write it like 75 °F or 24 °C.',
    })
  }
  const taken = combine(
    [volumeM3, reading(ambient)],
    ([cubic = 0, kelvin = 1]) => (cubic * barometerPa) / (DRY_AIR_GAS_CONSTANT * kelvin),
  )
  const { si, plusMinus } = settle(taken)
  const air = mass(si, plusMinus)
  const massStep: Step = {
    what: 'Air taken in on rejoining',
    formula:
      'inclusion volume × rejoinings × barometric pressure / (gas constant of air × temperature)',
    values: {
      volume: volumeQuantity(volumeM3),
      'barometric pressure': absolutePressure(barometerPa),
      temperature: ambient,
    },
    gives: air,
  }
  if (!vapourSpace || vapourSpace.si === 0) {
    return { mass: air, partialPressure: undefined, steps: [massStep] }
  }
  const share = settle(
    combine(
      [taken, reading(ambient), reading(vapourSpace), exactly(DRY_AIR_GAS_CONSTANT)],
      ([kg = 0, kelvin = 0, cubic = 1, gas = 0]) => (kg * gas * kelvin) / cubic,
    ),
  )
  const partialPressure = absolutePressure(share.si, share.plusMinus)
  return {
    mass: air,
    partialPressure,
    steps: [
      massStep,
      {
        what: 'Pressure of that air in the system at rest',
        formula: 'mass of air × gas constant of air × temperature / space that vapour fills',
        values: { 'mass of air': air, 'vapour space': vapourSpace, temperature: ambient },
        gives: partialPressure,
      },
    ],
  }
}

export const AIR_SOURCE = checkSource('dry-air')
