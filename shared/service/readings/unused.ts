import { isVehicle } from '../../fields/index.ts'
import type { Warning } from '../../operation.ts'
import { fillIn } from '../../sentence.ts'
import type { ReadingsInput } from './fields.ts'
import { TEXTS } from './texts.ts'

type Why = Exclude<keyof typeof TEXTS.unused, 'message'>

/** Readings and targets that went into nothing, and what they lack: nobody should think that they counted. */
export function unusedReadings(input: ReadingsInput): readonly Warning[] {
  const { machine, meteringDevice: device } = input
  const high = input.liquidPressure ?? input.dischargePressure
  const orifice = device === 'fixed-orifice' || device === 'orifice-tube'
  const valve = device !== undefined && !orifice
  const vehicleOrifice = orifice && machine !== undefined && isVehicle(machine)
  const byWeather = orifice && machine === 'stationary'
  const range = (name: 'superheat' | 'subcooling') => input[`${name}Low`] !== undefined
  const rules: readonly (readonly [keyof ReadingsInput, unused: boolean, why: Why])[] = [
    ['suctionTemperature', !input.suctionPressure, 'suction-pressure'],
    ['liquidTemperature', !high, 'liquid-pressure'],
    ['dischargeTemperature', !high, 'discharge-pressure'],
    ['returnWetBulb', !byWeather, 'by-weather'],
    ['superheatTarget', valve, 'valve-range'],
    ['superheatTarget', vehicleOrifice, 'tube'],
    ['superheatLow', vehicleOrifice, 'tube'],
    ['superheatTarget', byWeather && range('superheat'), 'range-overrides'],
    ['subcoolingTarget', valve && range('subcooling'), 'range-overrides'],
    ['lowGauge', !input.suctionPressure, 'no-suction-pressure'],
    ['lowGaugeSpan', !input.suctionPressure || !input.lowGauge, 'low-class'],
    ['highGauge', !high, 'no-high-pressure'],
    ['highGaugeSpan', !high || !input.highGauge, 'high-class'],
    ['subcoolingTarget', orifice, 'not-by-subcooling'],
    ['subcoolingLow', orifice, 'not-by-subcooling'],
  ]
  return rules
    .filter(([field, unused]) => unused && input[field] !== undefined)
    .map(([field, , why]) => ({
      code: 'reading-not-used',
      message: fillIn(TEXTS.unused.message, { field, why: TEXTS.unused[why] }),
    }))
}
