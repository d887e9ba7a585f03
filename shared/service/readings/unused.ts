import type { Warning } from '../../operation.ts'
import type { ReadingsInput } from './fields.ts'

/** Readings and targets that went into nothing, and what they lack: nobody should think that they counted. */
export function unusedReadings(input: ReadingsInput): readonly Warning[] {
  const { meteringDevice: device } = input
  const high = input.liquidPressure ?? input.dischargePressure
  const orifice = device === 'fixed-orifice' || device === 'orifice-tube'
  const valve = device !== undefined && !orifice
  const byWeather = orifice && input.equipment === 'stationary'
  const range = (name: 'superheat' | 'subcooling') => input[`${name}Low`] !== undefined
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
    [
      'superheatTarget',
      orifice && input.equipment === 'vehicle',
      'a vehicle orifice is judged by whether its evaporator outlet is flooded',
    ],
    [
      'superheatLow',
      orifice && input.equipment === 'vehicle',
      'a vehicle orifice is judged by whether its evaporator outlet is flooded',
    ],
    ['superheatTarget', byWeather && range('superheat'), 'the range goes before the target'],
    ['subcoolingTarget', valve && range('subcooling'), 'the range goes before the target'],
    ['lowGauge', !input.suctionPressure, 'there is no suction pressure'],
    ['lowGaugeSpan', !input.suctionPressure || !input.lowGauge, 'it belongs to a class (lowGauge)'],
    ['highGauge', !high, 'there is no pressure of the high side'],
    ['highGaugeSpan', !high || !input.highGauge, 'it belongs to a class (highGauge)'],
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
