import * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { defineOperation } from '../operation.ts'
import { quantityOut } from '../quantity/index.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { cansOut } from './charging/cans-part.ts'
import { computeCharging } from './charging/compute.ts'
import { fields } from './charging/fields.ts'
import { hoseOut } from './charging/hose-part.ts'
import { scaleOut } from './charging/scale.ts'
import { conditionOut } from './condition.ts'
import { statementOut } from './statement.ts'

const result = z.strictObject({
  refrigerant: z.string().describe('The refrigerant'),
  band: z
    .strictObject({
      low: quantityOut.describe('Least'),
      target: quantityOut.describe('The charge'),
      high: quantityOut.describe('Most'),
    })
    .describe('The charge with its tolerance'),
  toAdd: quantityOut.describe('Mass still to go in'),
  leavesSource: quantityOut.describe('Mass to add and hold-up of the hose together'),
  scale: scaleOut
    .optional()
    .describe('What the scale must read; absent where nothing has to be added'),
  hose: hoseOut.optional().describe('What the charging hose keeps'),
  cans: cansOut.optional().describe('Small cans'),
  sourcePressure: quantityOut.optional().describe('Pressure in the cylinder or can'),
  flow: z
    .enum(['into-system', 'back-into-source', 'cannot-tell'])
    .optional()
    .describe('Which way the pressures drive it'),
  routes: z.array(statementOut).describe('Ways in that are right for this refrigerant'),
  conditions: z.array(conditionOut).describe('What the weather must be'),
  practice: z.array(statementOut).describe('What goes with the work'),
})

/** Charging: what the scale must read, which way in, and what not to do. */
export const charging = defineOperation({
  name: 'charging',
  opens: lawOfJob,
  summary: 'What the scale must read while charging, and the right way in',
  description:
    'Scale readings to stop at with the hold-up of the hose, number of small cans, liquid or vapour and on which side, limits for warming and weather. Refuses the high side with the engine running, liquid into the suction, liquid R-744 below its triple pressure, a hydrocarbon into what is not built for it, zeotropic blends as vapour, and containers that are too warm.',
  fields,
  result,
  cautions: {
    always: [
      'pressure',
      'cold-burns',
      'asphyxiation',
      'no-high-side-running',
      'warm-water-only',
      'no-liquid-to-suction',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
    ],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    labelCharge: '2 lb 6 oz',
    scaleStart: '24.50 lb',
    scaleDivision: '0.2 oz',
    serviceHoseBore: '1/4 in',
    serviceHoseLength: '72 in',
    serviceHoseStarts: 'empty',
    serviceHoseHolds: 'liquid',
    sourceTemperature: '77 °F',
    engine: 'off',
    side: 'high',
    phase: 'liquid',
  },
  compute: computeCharging,
})
