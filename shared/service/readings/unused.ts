import { isVehicle } from '../../fields/index.ts'
import type { Warning } from '../../operation.ts'
import { fillIn } from '../../sentence.ts'
import type { ReadingsInput } from './fields.ts'
import { TEXTS } from './texts.ts'

type Why = Exclude<keyof typeof TEXTS.unused, 'message'>

/** What decides whether a reading counts. */
interface Facts {
  readonly input: ReadingsInput
  readonly high: boolean
  readonly valve: boolean
  readonly orifice: boolean
  readonly vehicleOrifice: boolean
  readonly byWeather: boolean
}

/** When a field that is given went into nothing, and what it lacks. */
const RULES: readonly (readonly [keyof ReadingsInput, (facts: Facts) => boolean, Why])[] = [
  ['suctionTemperature', ({ input }) => !input.suctionPressure, 'suction-pressure'],
  ['liquidTemperature', ({ high }) => !high, 'liquid-pressure'],
  ['dischargeTemperature', ({ high }) => !high, 'discharge-pressure'],
  ['returnWetBulb', ({ byWeather }) => !byWeather, 'by-weather'],
  ['superheatTarget', ({ valve }) => valve, 'valve-range'],
  ['superheatTarget', ({ vehicleOrifice }) => vehicleOrifice, 'tube'],
  ['superheatLow', ({ vehicleOrifice }) => vehicleOrifice, 'tube'],
  [
    'superheatTarget',
    ({ input, byWeather }) => byWeather && input.superheatLow !== undefined,
    'range-overrides',
  ],
  [
    'subcoolingTarget',
    ({ input, valve }) => valve && input.subcoolingLow !== undefined,
    'range-overrides',
  ],
  ['lowGauge', ({ input }) => !input.suctionPressure, 'no-suction-pressure'],
  ['lowGaugeSpan', ({ input }) => !input.suctionPressure || !input.lowGauge, 'low-class'],
  ['highGauge', ({ high }) => !high, 'no-high-pressure'],
  ['highGaugeSpan', ({ input, high }) => !high || !input.highGauge, 'high-class'],
  ['subcoolingTarget', ({ orifice }) => orifice, 'not-by-subcooling'],
  ['subcoolingLow', ({ orifice }) => orifice, 'not-by-subcooling'],
]

/** Readings and targets that went into nothing, and what they lack: nobody should think that they counted. */
export function unusedReadings(input: ReadingsInput): readonly Warning[] {
  const { machine, meteringDevice: device } = input
  const orifice = device === 'fixed-orifice' || device === 'orifice-tube'
  const facts: Facts = {
    input,
    high: (input.liquidPressure ?? input.dischargePressure) !== undefined,
    valve: device !== undefined && !orifice,
    orifice,
    vehicleOrifice: orifice && machine !== undefined && isVehicle(machine),
    byWeather: orifice && machine === 'stationary',
  }
  return RULES.filter(([field, isUnused]) => input[field] !== undefined && isUnused(facts)).map(
    ([field, , why]) => ({
      code: 'reading-not-used',
      message: fillIn(TEXTS.unused.message, { field, why: TEXTS.unused[why] }),
    }),
  )
}
