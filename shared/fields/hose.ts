import * as z from 'zod'
import { HOSE_CONTENTS, type HoseContents } from '../physics/hose.ts'
import { quantityIn } from '../quantity/index.ts'
import { choiceIn } from './choice.ts'

const contentsIn = () =>
  choiceIn(HOSE_CONTENTS, { evacuated: 'empty', vacuum: 'empty', vapor: 'vapour' })

/** The charging hose between scale and machine. */
export const serviceHoseIn = {
  serviceHoseBore: quantityIn.length.optional().describe('Inner diameter of the charging hose'),
  serviceHoseLength: quantityIn.length
    .optional()
    .describe('Length of the charging hose between scale and machine'),
  serviceHoseStarts: contentsIn()
    .optional()
    .describe('What the charging hose held when the scale was read first; empty means evacuated'),
  serviceHoseHolds: contentsIn()
    .optional()
    .describe('What the charging hose holds when it is taken off'),
  serviceHosePressure: quantityIn.pressure
    .optional()
    .describe('Pressure of the vapour in the charging hose at the end, such as the low side’s'),
}

/** The hose or hoses to the vacuum pump. */
export const vacuumHoseIn = {
  vacuumHoseBore: quantityIn.length.optional().describe('Inner diameter of the hose to the pump'),
  vacuumHoseLength: quantityIn.length.optional().describe('Length of the hose to the pump'),
  vacuumHoses: z
    .array(
      z.strictObject({
        length: quantityIn.length.describe('Length of the hose'),
        bore: quantityIn.length.describe('Inner diameter of the hose'),
      }),
    )
    .max(20)
    .optional()
    .describe('Several hoses one after the other, pump end first, instead of the one'),
}

export { HOSE_CONTENTS, type HoseContents }
