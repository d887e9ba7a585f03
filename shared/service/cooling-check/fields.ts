import * as z from 'zod'
import { placeIn, refrigerantIn } from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { AIR_MODES, ENGINE_SPEEDS, MACHINES, WINDOWS } from './tables.ts'

export const coolingFields = {
  refrigerant: refrigerantIn,
  ambient: quantityIn.temperature.describe('Temperature of the air into the condenser'),
  ventTemperature: quantityIn.temperature.optional().describe('Air out of the centre vent'),
  lowPressure: quantityIn.pressure
    .optional()
    .describe('Low side while running, read just before the clutch lets go'),
  highPressure: quantityIn.pressure.optional().describe('High side while running'),
  airIn: quantityIn.temperature
    .optional()
    .describe('Air into the evaporator: of the cab when recirculating; without it the ambient'),
  relativeHumidity: quantityIn.fraction
    .optional()
    .describe('Relative humidity of the air into the evaporator'),
  machine: z.enum(MACHINES).optional().describe('Kind of machine, to pick the tables that fit'),
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
}

export type CoolingInput = z.output<z.ZodObject<typeof coolingFields>>
