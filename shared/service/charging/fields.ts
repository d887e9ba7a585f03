import * as z from 'zod'
import { placeIn, refrigerantIn } from '../../fields/index.ts'
import { HOSE_CONTENTS } from '../../physics/hose.ts'
import { quantityIn } from '../../quantity/index.ts'
import { SUPPLIES } from './route.ts'

export const fields = {
  refrigerant: refrigerantIn,
  charge: quantityIn.mass.describe('Full charge to reach: the label’s, or the corrected target'),
  tolerance: quantityIn.mass.optional().describe('How far off the charge may be, to either side'),
  alreadyIn: quantityIn.mass
    .optional()
    .describe('Mass weighed in so far; leave out after evacuation'),
  supply: z.enum(SUPPLIES).default('cylinder').describe('What the refrigerant comes from'),
  scale: z
    .enum(['under-source', 'under-machine'])
    .default('under-source')
    .describe('What stands on the scale: the source or the machine being charged'),
  scaleStart: quantityIn.mass.optional().describe('Scale reading before the valve is opened'),
  scaleDivision: quantityIn.mass.optional().describe('Smallest step that the scale shows'),
  sourceContents: quantityIn.mass
    .optional()
    .describe('Refrigerant in the cylinder before charging'),
  canNet: quantityIn.mass.optional().describe('Small cans: net mass on the label of one'),
  canLeft: quantityIn.mass.optional().describe('Small cans: what stays in one when it is empty'),
  hoseBore: quantityIn.length.optional().describe('Inner diameter of the charging hose'),
  hoseLength: quantityIn.length.optional().describe('Length of the charging hose'),
  hoseAtStart: z
    .enum(HOSE_CONTENTS)
    .optional()
    .describe('What the hose held when the scale was read at the start'),
  hoseAtEnd: z.enum(HOSE_CONTENTS).optional().describe('What the hose holds when it is taken off'),
  hosePressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the vapour in the hose at the end, such as the low side’s'),
  sourceTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the cylinder or can'),
  waterTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the water that warms the cylinder or can'),
  outdoorTemperature: quantityIn.temperature.optional().describe('Air temperature at the place'),
  systemPressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the side that is charged into'),
  engine: z.enum(['off', 'running']).optional().describe('Engine (compressor) while charging'),
  side: z.enum(['high', 'low']).optional().describe('Side that is charged into'),
  phase: z.enum(['liquid', 'vapour']).optional().describe('How the refrigerant leaves its source'),
  throttled: z
    .boolean()
    .optional()
    .describe('Liquid is throttled to vapour on the way into the low side'),
  judgeBy: z
    .enum(['weight', 'subcooling', 'superheat'])
    .default('weight')
    .describe('What decides that the charge is right'),
  equipment: z.enum(['vehicle', 'stationary']).optional().describe('Kind of machine'),
  ...placeIn,
}

export type ChargingInput = z.output<z.ZodObject<typeof fields>>
