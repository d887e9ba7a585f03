import * as z from 'zod'
import { LAWS } from '../fields/place.ts'
import { markOut } from '../sources.ts'
import { HELD, NEEDED } from './certificate.ts'

const ANSWERS = {
  venting: ['prohibited', 'exempt', 'look-up'],
  use: ['acceptable-with-conditions', 'not-acceptable', 'look-up'],
  reuse: ['recycle-first', 'recover', 'same-owner', 'look-up'],
  leakRepair: ['duty', 'no-federal-duty', 'look-up'],
  retrofit: ['acceptable-with-conditions', 'not-acceptable', 'look-up'],
} as const

export const statementOut = z
  .strictObject({
    id: z.string(),
    text: z.string(),
    section: z.string(),
    mark: markOut,
    checked: z.string().optional().describe('Month or day on which the text was read'),
    source: z.string(),
    edition: z
      .string()
      .optional()
      .describe('Which text was read, where it is not the one in force'),
    url: z.string().optional(),
    applies: z.enum(['yes', 'depends']),
    dependsOn: z.array(z.string()),
  })
  .meta({
    id: 'LawStatement',
    description: 'A statement of law with its section and date of check.',
  })

const statements = z.array(statementOut)

const answered = <T extends readonly [string, ...string[]]>(answers: T) =>
  z.strictObject({ answers: z.array(z.enum(answers)), statements })

export const rulesOut = z.strictObject({
  law: z.enum(LAWS),
  lawName: z.string(),
  refrigerant: z.string(),
  regime: z.strictObject({
    decided: z.boolean(),
    ids: z.array(z.string()),
    names: z.array(z.string()),
    missing: z.array(z.string()).describe('Input fields that would decide between them'),
    statements,
  }),
  certificate: z.strictObject({
    needed: z.enum(NEEDED),
    anyOf: z.array(z.strictObject({ id: z.string(), name: z.string() })),
    held: z.enum(HELD),
    missing: z.array(z.string()).describe('Input fields that would decide what it takes'),
    says: z.string(),
    statements,
  }),
  venting: answered(ANSWERS.venting),
  use: answered(ANSWERS.use).describe('Whether this refrigerant may be in this machine at all'),
  equipment: z.strictObject({ statements }),
  reuse: answered(ANSWERS.reuse),
  leakRepair: answered(ANSWERS.leakRepair),
  retrofit: answered(ANSWERS.retrofit),
  records: z.strictObject({ statements }),
  elsewhere: z.strictObject({ statements }),
  unverified: z.array(z.string()).describe('Statements from memory: look them up'),
})

export type RulesShown = z.output<typeof rulesOut>
