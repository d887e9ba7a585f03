import * as z from 'zod'
import { quantityOut } from '../../quantity/index.ts'
import { CASES } from './fields.ts'

const lineCheck = z.strictObject({
  printed: quantityOut.describe('Mass per length that the maker prints'),
  computed: quantityOut.describe('Bore area times density'),
  ratio: z.number().describe('Printed over computed'),
  source: z.string().describe('Id in sources'),
})

const inventory = z.strictObject({
  name: z.string(),
  mass: quantityOut.describe('What the section holds, or what the part changes (may be negative)'),
  density: quantityOut.optional(),
  volume: quantityOut.optional(),
  lineChecks: z.array(lineCheck).describe("Makers' printed figures beside ours"),
})

/** What `charge` answers. */
export const chargeResult = z.strictObject({
  appliedCase: z.enum(CASES).describe('The case that the answer follows'),
  why: z.string().describe('Why this case applies, and what it allows'),
  kind: z
    .enum(['correction', 'full-charge', 'what-if'])
    .describe('A mass to add, the whole charge to weigh in, or a range that is no measurement'),
  conclusion: z.string().describe('The answer in one sentence'),
  massToAdd: quantityOut.optional().describe('Mass to weigh in; absent in a what-if'),
  massToAddFrom: quantityOut
    .optional()
    .describe('Lower end of its band; absent when no reading carries an uncertainty'),
  massToAddTo: quantityOut.optional().describe('Upper end of its band'),
  whatIfFrom: quantityOut.optional().describe('What-if: least that may be missing'),
  whatIfTo: quantityOut.optional().describe('What-if: most that may be missing'),
  setOnScale: quantityOut
    .optional()
    .describe('Mass that must leave the cylinder: mass to add and what the service hose keeps'),
  onTheScale: z.string().describe('The same in words'),
  holdUp: quantityOut.optional().describe('What the service hose keeps'),
  totalTarget: quantityOut.optional().describe('Charge of the whole machine afterwards'),
  changeOfCharge: quantityOut
    .optional()
    .describe('What altered parts change of the label charge; may be negative'),
  ownEstimate: quantityOut.optional().describe("Our own figure, where the maker's goes before it"),
  recovered: quantityOut.optional().describe('Mass recovered, as weighed'),
  lost: quantityOut.optional().describe('What is missing beyond the mass recovered'),
  newRefrigerant: quantityOut
    .optional()
    .describe('What must come from another cylinder if all that was recovered goes back'),
  couplings: z.array(
    z.strictObject({
      name: z.string(),
      contents: z.string(),
      partings: z.number(),
      density: quantityOut,
      spillVolume: quantityOut.optional(),
      loss: quantityOut.optional(),
      lossFrom: quantityOut.optional(),
      lossTo: quantityOut.optional(),
    }),
  ),
  sections: z.array(inventory),
  parts: z.array(inventory),
  air: z
    .strictObject({
      mass: quantityOut,
      partialPressure: quantityOut.optional(),
    })
    .optional()
    .describe('Air taken in on rejoining'),
  againstCharge: z
    .strictObject({
      from: quantityOut,
      to: quantityOut,
      verdict: z.enum(['inside', 'outside', 'cannot-tell']),
      text: z.string(),
    })
    .optional()
    .describe("What is missing against the charge's tolerance"),
  againstScale: z
    .strictObject({
      smallest: quantityOut,
      verdict: z.enum(['weighable', 'too-small', 'cannot-tell']),
      text: z.string(),
    })
    .optional()
    .describe('The mass to weigh against what the scale can tell apart'),
  measure: z.string().describe('What decides whether the charge is right'),
  advice: z.array(z.string()),
})

export type ChargeResult = z.output<typeof chargeResult>
