import * as z from 'zod'
import {
  ambientIn,
  gaugesIn,
  machineIn,
  placeIn,
  refrigerantIn,
  relativeHumidityIn,
  returnAirIn,
  thermometersIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { AIR_MODES, ENGINE_SPEEDS, WINDOWS } from './tables.ts'

export const coolingFields = {
  refrigerant: refrigerantIn,
  ambient: ambientIn,
  ventTemperature: quantityIn.temperature.optional().describe('Air out of the centre vent'),
  suctionPressure: quantityIn.pressure
    .optional()
    .describe('Low side while running, read just before the clutch lets go'),
  dischargePressure: quantityIn.pressure
    .optional()
    .describe('High side while running, at the discharge line'),
  liquidPressure: quantityIn.pressure
    .optional()
    .describe('High side while running, at the liquid line instead'),
  returnAir: returnAirIn.optional(),
  relativeHumidity: relativeHumidityIn.optional(),
  machine: machineIn.optional(),
  air: z.enum(AIR_MODES).optional().describe('Recirculated or outside air'),
  windows: z.enum(WINDOWS).optional().describe('Doors and windows during the test'),
  engine: z.enum(ENGINE_SPEEDS).optional().describe('Engine speed during the test'),
  makerHighFrom: quantityIn.pressure.optional().describe('Least high side by the equipment maker'),
  makerHighTo: quantityIn.pressure.optional().describe('Most high side by the equipment maker'),
  makerLowFrom: quantityIn.pressure.optional().describe('Least low side by the equipment maker'),
  makerLowTo: quantityIn.pressure.optional().describe('Most low side by the equipment maker'),
  makerVentTo: quantityIn.temperature
    .optional()
    .describe('Warmest vent by the equipment maker under these conditions'),
  staticHigh: quantityIn.pressure.optional().describe('High side at rest, engine off, settled'),
  staticLow: quantityIn.pressure.optional().describe('Low side at rest, engine off, settled'),
  cutOut: quantityIn.pressure.optional().describe('Low side at which the clutch lets go'),
  cutIn: quantityIn.pressure.optional().describe('Low side at which the clutch pulls in'),
  cyclesPerMinute: z
    .number()
    .min(0)
    .max(60)
    .optional()
    .describe('How often the clutch pulls in within a minute'),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

export type CoolingInput = z.output<z.ZodObject<typeof coolingFields>>
