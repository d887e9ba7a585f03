import * as z from 'zod'
import {
  choiceIn,
  gaugesIn,
  placeIn,
  refrigerantIn,
  thermometersIn,
  volumeIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'

export const fields = {
  refrigerant: refrigerantIn,
  pressure: quantityIn.pressure.describe('Pressure of the resting container or system'),
  temperature: quantityIn.temperature.describe('Its temperature, read within 4 inches of it'),
  container: choiceIn(['cylinder', 'system'], { tank: 'cylinder', machine: 'system' })
    .default('cylinder')
    .describe('A cylinder of recovered or recycled refrigerant, or a machine at rest'),
  recycled: z.boolean().optional().describe('The contents have been recycled'),
  rested: quantityIn.duration.optional().describe('How long it has rested at this temperature'),
  inSun: z.boolean().optional().describe('It stands in the sun or near heat'),
  volume: volumeIn.optional().describe('Inner volume of the container: WC in kg is about litres'),
  contents: quantityIn.mass.optional().describe('Refrigerant in it: gross less tare'),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

export type AirCheckInput = z.output<z.ZodObject<typeof fields>>
