import type { Warning } from '../../operation.ts'
import type { ReadingsInput } from './fields.ts'

/** Readings and targets that went into nothing, and what they lack: nobody should think that they counted. */
export function unusedReadings(input: ReadingsInput): readonly Warning[] {
  const { meteringDevice: device } = input
  const high = input.liquidPressure ?? input.dischargePressure
  const orifice = device === 'fixed-orifice' || device === 'orifice-tube'
  const valve = device !== undefined && !orifice
  const byWeather = orifice && input.equipment === 'stationary'
  const rules: readonly (readonly [keyof ReadingsInput, unused: boolean, why: string])[] = [
    ['suctionTemperature', !input.suctionPressure, 'superheat takes the suction pressure too'],
    ['liquidTemperature', !high, 'subcooling takes the liquid pressure too'],
    ['dischargeTemperature', !high, 'discharge superheat takes the discharge pressure too'],
    [
      'indoorWetBulb',
      !byWeather,
      'only a fixed orifice on stationary equipment has a target by weather',
    ],
    [
      'outdoorDryBulb',
      !byWeather,
      'only a fixed orifice on stationary equipment has a target by weather; give the air at the condenser as ambient',
    ],
    [
      'superheatTarget',
      valve,
      'a valve is judged by a range of superheat: give superheatLow and superheatHigh',
    ],
    ['subcoolingTarget', orifice, 'an orifice is not judged by its subcooling'],
    ['subcoolingLow', orifice, 'an orifice is not judged by its subcooling'],
  ]
  return rules
    .filter(([field, unused]) => unused && input[field] !== undefined)
    .map(([field, , why]) => ({
      code: 'reading-not-used',
      message: `${field} was not used: ${why}.`,
    }))
}
