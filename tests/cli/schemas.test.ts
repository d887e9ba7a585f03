import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as zod from 'zod'
import * as schemas from '../../cli/schemas/index.ts'

/** The same schema by zod and by what stands for it in the bundle. */
const both = (make: (z: typeof zod) => zod.ZodType) =>
  ({ real: make(zod), quick: make(schemas as unknown as typeof zod) }) as const

/** A quantity as fields take one: anything is taken, and read by a transformation that may refuse. */
const read = (z: typeof zod) =>
  z
    .unknown()
    .meta({ id: undefined })
    .transform((raw, context) => {
      if (typeof raw === 'string' && raw.endsWith('psig')) return Number.parseFloat(raw)
      context.addIssue({ code: 'custom', message: 'no pressure' })
      return z.NEVER
    })

const makers: Readonly<Record<string, (z: typeof zod) => zod.ZodType>> = {
  text: (z) => z.string().trim().min(1).max(5),
  spelt: (z) => z.string().regex(/^a/u).optional(),
  choice: (z) => z.enum(['a', 'b']).default('b').describe('One of two'),
  'yes or no': (z) => z.boolean().optional().describe('Whether'),
  number: (z) => z.number().min(-1).max(2),
  positive: (z) => z.number().positive(),
  'not negative': (z) => z.number().nonnegative().optional(),
  whole: (z) => z.number().int().max(3),
  'whole by itself': (z) => z.int(),
  quantity: (z) => read(z),
  'quantity left out': (z) => read(z).optional().describe('A pressure'),
  list: (z) => z.array(z.strictObject({ a: read(z), b: z.string().optional() })).max(2),
  either: (z) => z.union([z.string(), z.number()]),
  fixed: (z) => z.literal('a'),
  map: (z) => z.record(z.string(), z.number()),
  'preset before optional': (z) => z.number().default(2).optional(),
  'preset of what is read': (z) => read(z).default(7),
  'read after optional': (z) =>
    z
      .string()
      .optional()
      .transform((text) => text ?? 'none'),
  'read from anything': (z) => z.unknown().transform(() => 'always'),
  'refused behind': (z) => z.string().refine((text) => text !== 'b', 'not b'),
  'any text or nothing': (z) => z.string().nullable(),
}

const leaf = fc.constantFrom<unknown>(
  ...[undefined, null, true, false, 0, -0, 1, 1.5, -1, 3, 4, 2 ** 60, Number.NaN, 1 / 0],
  ...['', 'a', 'b', ' a ', 'abcdef', '32 psig', '__proto__'],
)
const value = fc.oneof(
  leaf,
  fc.array(leaf, { maxLength: 3 }),
  fc.record({ a: leaf, b: leaf, c: leaf }, { requiredKeys: [] }),
  fc.array(fc.record({ a: leaf, b: leaf }, { requiredKeys: [] }), { maxLength: 3 }),
)

/** What an input is read as, or why it is refused. */
function outcome(schema: zod.ZodType, input: unknown) {
  const { success, data, error } = schema.safeParse(input)
  return success ? { data, names: namesOf(data) } : { issues: error?.issues }
}
const namesOf = (data: unknown) =>
  typeof data === 'object' && data !== null ? Object.keys(data) : undefined

describe('what stands for zod in the bundle', () => {
  it.each(Object.entries(makers))('reads %s as zod does, at first and again', (_, make) => {
    fc.assert(
      fc.property(value, value, (first, second) => {
        const { real, quick } = both(make)
        for (const input of [first, second]) {
          expect(outcome(quick, input)).toEqual(outcome(real, input))
        }
      }),
    )
  })

  it.each(Object.entries(makers))('reads an object with and without %s as zod does', (_, make) => {
    const object = () => both((z) => z.strictObject({ a: make(z) }))
    for (const input of [{}, { b: 1 }, [], null]) {
      const { real, quick } = object()
      expect(outcome(quick, input)).toEqual(outcome(real, input))
    }
    fc.assert(
      fc.property(value, (a) => {
        const { real, quick } = object()
        expect(outcome(quick, { a })).toEqual(outcome(real, { a }))
      }),
    )
  })

  it('reads objects of any such fields as zod does', () => {
    const names = Object.keys(makers)
    const some = fc.uniqueArray(fc.constantFrom(...names), { maxLength: 5 })
    fc.assert(
      fc.property(some, fc.dictionary(fc.constantFrom(...names), value), (fields, input) => {
        const { real, quick } = both((z) =>
          z.strictObject(
            Object.fromEntries(
              fields.map((name) => [name, (makers[name] as (z: typeof zod) => zod.ZodType)(z)]),
            ),
          ),
        )
        expect(outcome(quick, input)).toEqual(outcome(real, input))
      }),
      { numRuns: 400 },
    )
  })

  it('is asked as a schema is: its kind, its fields, its JSON Schema, what is said of it', () => {
    const { real, quick } = both((z) =>
      z.strictObject({ a: z.string().describe('A text'), b: z.array(z.int()).optional() }),
    )
    expect(quick instanceof (schemas.ZodObject as unknown as typeof zod.ZodObject)).toBe(true)
    expect(schemas.string() instanceof (schemas.ZodObject as never)).toBe(false)
    expect(quick instanceof zod.ZodObject).toBe(true)
    expect(schemas.toJSONSchema(quick)).toEqual(zod.toJSONSchema(real))
    const told = schemas.string().describe('A text')
    expect(schemas.globalRegistry.get(told)).toEqual({ description: 'A text' })
    expect(told.meta()).toEqual({ description: 'A text' })
  })
})
