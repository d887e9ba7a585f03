import { describe, expect, it } from 'vitest'
import * as zod from 'zod'
import * as ours from '../../shared/schema.ts'

/** The same schema made by either, of everything that the project uses. */
function made(z: typeof ours) {
  const lamp = z
    .strictObject({ lit: z.boolean(), colour: z.enum(['red', 'green']) })
    .meta({ id: 'Lamp', description: 'A lamp' })
  return z.strictObject({
    name: z.string().trim().min(1).max(8).describe('A name'),
    plate: z
      .string()
      .toLowerCase()
      .regex(/^[a-z]+$/u)
      .optional(),
    count: z.number().int().min(1).max(9).default(3).describe('How many'),
    share: z.number().nonnegative().optional(),
    kind: z.literal('crane'),
    years: z.literal([5, 7, 10]).optional(),
    date: z.string().regex(/^\d+$/u, 'Digits only').optional(),
    lamps: z.array(lamp).min(1).max(2).optional().describe('Lamps'),
    first: lamp.optional(),
    either: z.union([z.string(), z.number()]).optional(),
    by: z.record(z.string(), z.number()).optional(),
    any: z
      .unknown()
      .meta({ description: 'Anything', examples: ['1 kg'] })
      .transform((raw, context): string => {
        if (raw !== 13) return String(raw)
        context.addIssue({ code: 'custom', message: 'Not thirteen', path: ['deep'] })
        return z.NEVER
      })
      .optional(),
  })
}

const mine = made(ours)
const theirs = made(zod)
const good = { name: ' Ada ', kind: 'crane' }
const inputs: readonly unknown[] = [
  good,
  { ...good, plate: 'ABC', count: 9, share: 0, either: 1, by: { a: 1 }, any: null },
  { ...good, lamps: [{ lit: true, colour: 'red' }], first: { lit: false, colour: 'green' } },
  { ...good, any: 13 },
  { ...good, name: '' },
  { ...good, name: 'far too long' },
  { ...good, name: 7 },
  { ...good, plate: '1' },
  { ...good, count: 1.5 },
  { ...good, count: 0 },
  { ...good, count: 10 },
  { ...good, count: '3' },
  { ...good, count: Number.NaN },
  { ...good, share: -1 },
  { ...good, kind: 'lift' },
  { ...good, years: 7, date: '12' },
  { ...good, years: 6 },
  { ...good, date: 'x' },
  { ...good, lamps: [] },
  { ...good, lamps: [{ lit: 'yes', colour: 'blue' }, {}, {}] },
  { ...good, lamps: {} },
  { ...good, either: {} },
  { ...good, by: { a: 'b' } },
  { ...good, extra: 1, more: 2 },
  {},
  [],
  null,
  undefined,
  'text',
]

describe('our part of zod', () => {
  it.each(inputs.map((input) => ({ input })))(
    'takes and refuses $input as zod does',
    ({ input }) => {
      const [found, wanted] = [mine.safeParse(input), theirs.safeParse(input)]
      expect(found.success).toBe(wanted.success)
      expect(found.data).toEqual(wanted.data)
      expect(found.error?.issues).toEqual(wanted.error?.issues)
      if (!wanted.success) expect(() => mine.parse(input)).toThrow(wanted.error.message)
    },
  )

  it.each(['input', 'output'] as const)('has the JSON Schema of zod for %s', (io) => {
    const options = { io, unrepresentable: 'any' } as const
    expect(ours.toJSONSchema(mine, options)).toEqual(zod.toJSONSchema(theirs, options))
  })

  it('keeps a description on the schema that was asked, and leaves the one before it alone', () => {
    const plain = ours.string()
    const described = plain.describe('A name')
    expect(ours.toJSONSchema(described)).toMatchObject({ description: 'A name' })
    expect(ours.toJSONSchema(plain)).not.toHaveProperty('description')
    expect(ours.toJSONSchema(described.optional())).toMatchObject({ description: 'A name' })
  })

  it('tells an object from the rest, and gives its fields', () => {
    expect(mine).toBeInstanceOf(ours.ZodObject)
    expect(ours.string()).not.toBeInstanceOf(ours.ZodObject)
    expect(Object.keys(mine.shape)).toEqual(Object.keys(theirs.shape))
  })
})
