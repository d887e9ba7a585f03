import * as z from 'zod'
import {
  gaugesIn,
  placeIn,
  refrigerantIn,
  thermometersIn,
  vacuumHoseIn,
  volumeIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { HOLD_LIMITS } from './hold-limit.ts'

/** More readings than anybody takes by hand or a logger needs. */
const MOST_READINGS = 2_000

const risePointIn = z.strictObject({
  time: quantityIn.duration.describe('Time since the valve to the pump was closed'),
  pressure: quantityIn.pressure.describe('Pressure read then, such as 650 micron or 29.4 inHg vac'),
})

export const fields = {
  refrigerant: refrigerantIn.optional(),
  temperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the coldest part of the system'),
  vacuum: quantityIn.pressure
    .optional()
    .describe('Vacuum reached, such as 800 micron or 29.2 inHg vac'),
  target: quantityIn.pressure
    .optional()
    .describe("Vacuum to pull down to, the maker's figure; without it 500 micron"),
  holdFor: quantityIn.duration
    .optional()
    .describe('Time to watch the gauge with the pump valved off; without it 10 min'),
  holdBelow: quantityIn.pressure
    .optional()
    .describe('Pressure that must not be passed in that time; without it 1000 micron'),
  rise: z
    .array(risePointIn)
    .max(MOST_READINGS)
    .optional()
    .describe('Readings with the pump valved off: time and pressure, in order'),
  riseScatter: quantityIn.pressureDifference
    .optional()
    .describe('Scatter of the gauge from one reading to the next (±), where it is known'),
  negligibleRise: quantityIn.pressureDifference
    .optional()
    .describe('Steady rise in 10 min that does not matter; without it 100 micron'),
  limit: z.enum(HOLD_LIMITS).optional().describe('A published rule for holding the vacuum'),
  volume: volumeIn
    .optional()
    .describe('Inner volume of the system and its hoses, from the maker or measured'),
  pumpDisplacement: quantityIn.volumeFlow
    .optional()
    .describe('Displacement of the vacuum pump, such as 6 cfm'),
  pumpUltimate: quantityIn.pressure
    .optional()
    .describe('Lowest pressure that the pump reaches by itself, such as 25 micron'),
  startPressure: quantityIn.pressure
    .optional()
    .describe('Pressure at which the pump starts; without it the barometer'),
  ...vacuumHoseIn,
  waterMass: quantityIn.mass
    .optional()
    .describe('Water to be carried off, for the least drying time'),
  ...gaugesIn,
  ...thermometersIn,
  ...placeIn,
}

export type EvacuationInput = z.output<z.ZodObject<typeof fields>>
