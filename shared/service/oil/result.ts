import * as z from 'zod'
import { quantityOut } from '../../quantity/index.ts'

/** What `oil` answers. */
export const oilResult = z.strictObject({
  pourIn: quantityOut.describe(
    'Oil to pour in from the can: all that must go in, less what the new compressor already holds of it',
  ),
  add: quantityOut.describe(
    "Oil that must go in altogether, the new compressor's own share included",
  ),
  addFrom: quantityOut.describe('Least by the published spread'),
  addTo: quantityOut.describe("Most by the published spread; never above the system's total"),
  limited: z
    .boolean()
    .describe("Whether the system's total cut the sum: more would slug the compressor"),
  oilTotal: quantityOut.optional().describe("The system's total, the maker's or by a formula"),
  ownTotal: quantityOut
    .optional()
    .describe("Total by the published formula, where the maker's overrides it"),
  lines: z
    .array(
      z.strictObject({
        what: z.string(),
        add: quantityOut,
        from: quantityOut,
        to: quantityOut,
        rule: z.string(),
        sources: z.array(z.string()).describe('Ids in sources'),
      }),
    )
    .describe('Where the oil goes, and by which rule'),
  besideCompressor: quantityOut
    .optional()
    .describe('Of a total: what goes in beside the oil that the new compressor holds'),
  compressor: z
    .strictObject({
      mustHold: quantityOut.describe('Oil that the new compressor must hold when it goes in'),
      rule: z.string(),
      drainFromNew: quantityOut.optional().describe('To take out of the new compressor'),
      addToNew: quantityOut.optional().describe('To add to the new compressor'),
      text: z.string(),
    })
    .optional(),
  oilType: z.strictObject({
    verdict: z.enum(['fits', 'ask-maker', 'not-given']),
    oil: z.string().optional(),
    family: z.string().optional(),
    text: z.string(),
  }),
  notes: z.array(
    z.strictObject({ text: z.string(), source: z.string().describe('Id in sources') }),
  ),
  advice: z.array(z.string()),
})

export type OilResult = z.output<typeof oilResult>
