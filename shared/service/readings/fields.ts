import * as z from 'zod'
import instruments from '../../../data/service/instruments.json' with { type: 'json' }
import { quantityIn } from '../../quantity/index.ts'
import { placeIn } from '../place.ts'
import { refrigerantIn } from '../refrigerant-input.ts'

const EQUIPMENT = ['vehicle', 'stationary'] as const
export const METERING_DEVICES = [
  'expansion-valve',
  'electronic-valve',
  'fixed-orifice',
  'orifice-tube',
] as const

const gaugeClass = z.enum(idsOf(instruments.gauges)).optional()
const thermometerClass = z.enum(idsOf(instruments.thermometers)).optional()

function idsOf<T extends readonly { readonly id: string }[]>(rows: T): [string, ...string[]] {
  const [first = '', ...others] = rows.map((row) => row.id)
  return [first, ...others]
}

/** What a mechanic reads at a running machine. A reading may carry its own ±. */
export const readingsIn = {
  refrigerant: refrigerantIn,
  equipment: z
    .enum(EQUIPMENT)
    .optional()
    .describe('What is being read; without it no verdict is given'),
  meteringDevice: z
    .enum(METERING_DEVICES)
    .optional()
    .describe('What feeds the evaporator; without it no verdict is given'),
  suctionPressure: quantityIn.pressure.optional().describe('Low-side pressure'),
  suctionTemperature: quantityIn.temperature
    .optional()
    .describe('Suction-line temperature at the place of the suction pressure'),
  liquidPressure: quantityIn.pressure.optional().describe('High-side pressure at the liquid line'),
  liquidTemperature: quantityIn.temperature
    .optional()
    .describe('Liquid-line temperature at the place of the liquid pressure'),
  dischargePressure: quantityIn.pressure
    .optional()
    .describe('High-side pressure at the discharge line, before the condenser'),
  dischargeTemperature: quantityIn.temperature
    .optional()
    .describe('Discharge-line temperature close to the compressor'),
  ambient: quantityIn.temperature
    .optional()
    .describe('Air entering the condenser, in the shade (outdoor dry bulb)'),
  indoorWetBulb: quantityIn.temperature
    .optional()
    .describe('Wet bulb of the air entering the evaporator; for the target superheat'),
  outdoorDryBulb: quantityIn.temperature
    .optional()
    .describe('Outdoor dry bulb for the target superheat; the ambient stands in for it'),
  superheatTarget: quantityIn.temperatureDifference
    .optional()
    .describe("The maker's target superheat"),
  superheatLow: quantityIn.temperatureDifference
    .optional()
    .describe("Lower end of the maker's superheat range"),
  superheatHigh: quantityIn.temperatureDifference
    .optional()
    .describe("Upper end of the maker's superheat range"),
  subcoolingTarget: quantityIn.temperatureDifference
    .optional()
    .describe("The maker's target subcooling"),
  subcoolingLow: quantityIn.temperatureDifference
    .optional()
    .describe("Lower end of the maker's subcooling range"),
  subcoolingHigh: quantityIn.temperatureDifference
    .optional()
    .describe("Upper end of the maker's subcooling range"),
  lowGauge: gaugeClass.describe('Accuracy class of the low-side gauge'),
  lowGaugeSpan: quantityIn.pressureDifference
    .optional()
    .describe('Scale of the low-side gauge from end to end, such as 120 psi'),
  highGauge: gaugeClass.describe('Accuracy class of the high-side gauge'),
  highGaugeSpan: quantityIn.pressureDifference
    .optional()
    .describe('Scale of the high-side gauge from end to end, such as 500 psi'),
  thermometer: thermometerClass.describe('Class of the temperature sensor, for every temperature'),
  contactError: quantityIn.temperatureDifference
    .optional()
    .describe('How far a pipe probe may be off by its contact, beside the class of its sensor'),
  ...placeIn,
}

const readingsInput = z.strictObject(readingsIn)

/** Readings as parsed: quantities in SI. */
export type ReadingsInput = z.output<typeof readingsInput>
