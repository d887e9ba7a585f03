import * as z from 'zod'
import { OPENING_JOBS } from '../../../fields/index.ts'
import { quantityOut } from '../../../quantity/index.ts'
import { KINDS } from '../mass/job.ts'
import { EVIDENCE } from '../space/recess.ts'

const lineCheck = z.strictObject({
  printed: quantityOut.describe('Mass per length that the maker prints'),
  computed: quantityOut.describe('Bore area times density'),
  ratio: z.number().describe('Printed over computed'),
  source: z.string().describe('Id in sources'),
})

const inventory = z.strictObject({
  name: z.string().describe('What it is called'),
  mass: quantityOut.describe('What the section holds, or what the part changes (may be negative)'),
  density: quantityOut.optional().describe('Density of what fills it'),
  volume: quantityOut.optional().describe('Its inner volume'),
  lineChecks: z.array(lineCheck).describe("Makers' printed figures beside ours"),
})

const coupling = z.strictObject({
  name: z.string().describe('What it is called'),
  evidence: z
    .enum(EVIDENCE)
    .describe(
      "What its spill rests on: the maker's figure, a caliper, the hex and length of its outside, or a what-if",
    ),
  contents: z.string().describe('What was counted to fill it'),
  partings: z.number().describe('How often it was parted'),
  density: quantityOut.describe('Density of that'),
  space: quantityOut.describe('Space that one parting can have spilt'),
  loss: quantityOut.optional().describe('What it lost, where that is known'),
  lossFrom: quantityOut.optional().describe('Least that it can have lost'),
  lossTo: quantityOut.optional().describe('Most that it can have lost'),
})

/** What `charge` answers. */
export const chargeResult = z.strictObject({
  appliedJob: z.enum(OPENING_JOBS).describe('The job that the answer follows'),
  why: z.string().describe('Why it applies, and what it allows'),
  kind: z
    .enum(KINDS)
    .describe(
      'A mass to add, a bound on what can be gone, the whole charge to weigh in, a what-if that is no measurement, or what must be measured first',
    ),
  massToAdd: quantityOut
    .optional()
    .describe('Mass that is missing or to weigh in; absent where it is not known'),
  massToAddFrom: quantityOut.optional().describe('Lower end of its band'),
  massToAddTo: quantityOut.optional().describe('Upper end of its band'),
  bound: z
    .strictObject({
      most: quantityOut.describe('Most that can be gone, its ± included: a bound, never the loss'),
      space: quantityOut.describe('Space in the couplings that it stands for'),
      verdict: z
        .enum(['inside', 'too-loose'])
        .describe('Inside the tolerance of the charge, or too loose to tell'),
    })
    .optional()
    .describe('What parted couplings cannot have exceeded'),
  likeParts: z
    .strictObject({
      from: quantityOut.describe('Of the next smaller sizes'),
      to: quantityOut.describe('Of the next larger sizes'),
      source: z.string().describe('Id in sources'),
    })
    .optional()
    .describe(
      'What like couplings may spill by their standard: a range beside it, no figure of it',
    ),
  whatIfFrom: quantityOut.optional().describe('What-if: least that may be missing'),
  whatIfTo: quantityOut.optional().describe('What-if: most that may be missing'),
  setOnScale: quantityOut
    .optional()
    .describe(
      'Mass that must leave the cylinder: mass to add and what the service hose keeps; absent where nothing has to be added',
    ),
  holdUp: quantityOut.optional().describe('What the service hose keeps'),
  totalTarget: quantityOut.optional().describe('Charge of the whole machine afterwards'),
  changeOfCharge: quantityOut
    .optional()
    .describe('What altered parts change of the label charge; may be negative'),
  ownEstimate: quantityOut.optional().describe("Our own figure, where the maker's overrides it"),
  recovered: quantityOut.optional().describe('Mass recovered, as weighed'),
  lost: quantityOut.optional().describe('What is missing beyond the mass recovered'),
  newRefrigerant: quantityOut
    .optional()
    .describe('What must come from another cylinder if all that was recovered goes back'),
  couplings: z.array(coupling).describe('Each coupling that was counted'),
  sections: z.array(inventory).describe('Each section that was counted'),
  parts: z.array(inventory).describe('Each altered part that was counted'),
  needs: z.array(z.string()).describe('Fields that would carry it on'),
  air: z
    .strictObject({
      mass: quantityOut.describe('Mass of the air'),
      partialPressure: quantityOut.optional().describe('Its share of the pressure at rest'),
    })
    .optional()
    .describe('Air let in on rejoining'),
  againstCharge: z
    .strictObject({
      from: quantityOut.describe('Below this the charge is inside its tolerance'),
      to: quantityOut.describe('Above this it is outside'),
      verdict: z.enum(['inside', 'outside', 'cannot-tell']).describe('Where it stands'),
      text: z.string().describe('The same in a sentence'),
    })
    .optional()
    .describe("What is missing against the charge's tolerance"),
  againstScale: z
    .strictObject({
      smallest: quantityOut.describe('Smallest mass that it can tell'),
      verdict: z.enum(['weighable', 'too-small', 'cannot-tell']).describe('Whether it can'),
      text: z.string().describe('The same in a sentence'),
    })
    .optional()
    .describe('The mass to weigh against what the scale can tell apart'),
  measure: z.string().describe('What decides whether the charge is right'),
  advice: z.array(z.string()).describe('What goes with the work'),
})

export type ChargeResult = z.output<typeof chargeResult>
