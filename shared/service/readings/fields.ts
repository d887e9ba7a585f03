import type * as z from 'zod'
import {
  ambientIn,
  gaugesIn,
  machineIn,
  meteringDeviceIn,
  placeIn,
  refrigerantIn,
  returnWetBulbIn,
  thermometersIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'

/** What a mechanic reads at a running machine. A reading may carry its own ±. */
export const readingsIn = {
  refrigerant: refrigerantIn,
  machine: machineIn.optional().describe('Kind of machine; without it no verdict is given'),
  meteringDevice: meteringDeviceIn
    .optional()
    .describe('What feeds the evaporator; without it less can be said'),
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
  ambient: ambientIn.optional(),
  returnWetBulb: returnWetBulbIn.optional(),
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
  ...gaugesIn,
  ...thermometersIn,
  ...placeIn,
}

/** Readings as parsed: quantities in SI. */
export type ReadingsInput = z.output<z.ZodObject<typeof readingsIn>>
