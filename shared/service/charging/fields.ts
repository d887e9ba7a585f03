import * as z from 'zod'
import {
  ambientIn,
  chargeToleranceIn,
  choiceIn,
  compressorDriveIn,
  gaugesIn,
  labelChargeIn,
  machineIn,
  placeIn,
  refrigerantIn,
  scaleIn,
  serviceHoseIn,
  thermometersIn,
} from '../../fields/index.ts'
import { type Quantity, quantityIn } from '../../quantity/index.ts'
import { SUPPLIES } from './route.ts'

export const fields = {
  refrigerant: refrigerantIn,
  labelCharge: labelChargeIn
    .describe('Full charge to reach: the label’s, or the corrected target')
    .optional(),
  chargeTolerance: chargeToleranceIn.optional(),
  alreadyIn: quantityIn.mass
    .optional()
    .describe('Mass weighed in so far; leave out after evacuation'),
  supply: choiceIn(SUPPLIES, { cans: 'small-cans', can: 'small-cans', station: 'charging-machine' })
    .default('cylinder')
    .describe('What the refrigerant comes from: cylinder, small-cans or charging-machine'),
  scale: z
    .enum(['under-source', 'under-machine'])
    .default('under-source')
    .describe('What stands on the scale: the source or the machine being charged'),
  scaleStart: quantityIn.mass.optional().describe('Scale reading before the valve is opened'),
  ...scaleIn,
  sourceContents: quantityIn.mass
    .optional()
    .describe('Refrigerant in the cylinder before charging'),
  canNet: quantityIn.mass.optional().describe('Small cans: net mass on the label of one'),
  canLeft: quantityIn.mass.optional().describe('Small cans: what stays in one when it is empty'),
  ...serviceHoseIn,
  sourceTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the cylinder or can'),
  waterTemperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the water that warms the cylinder or can'),
  ambient: ambientIn.optional(),
  systemPressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the side that is charged into'),
  engine: z.enum(['off', 'running']).optional().describe('Engine (compressor) while charging'),
  side: z.enum(['high', 'low']).optional().describe('Side that is charged into'),
  phase: choiceIn(['liquid', 'vapour'], { vapor: 'vapour', gas: 'vapour' })
    .optional()
    .describe('How the refrigerant leaves its source: liquid or vapour'),
  throttled: z
    .boolean()
    .optional()
    .describe('Liquid is throttled to vapour on the way into the low side'),
  ratedForFlammable: z
    .boolean()
    .optional()
    .describe(
      'Whether the system, and the charging machine where one is used, were built for a refrigerant that burns',
    ),
  judgeBy: z
    .enum(['weight', 'subcooling', 'superheat'])
    .default('weight')
    .describe('What decides that the charge is right'),
  machine: machineIn.optional(),
  compressorDrive: compressorDriveIn.optional(),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

/** As it is asked: what must not be done is refused even where the charge is not known yet. */
export type ChargingGiven = z.output<z.ZodObject<typeof fields>>

/** What can be worked out: the charge is known. */
export type ChargingInput = ChargingGiven & { readonly labelCharge: Quantity<'mass'> }
