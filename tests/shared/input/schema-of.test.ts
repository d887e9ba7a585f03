import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { type JsonSchema, schemaOf } from '../../../shared/input/schema-of.ts'
import { operations } from '../../../shared/operations.ts'

type Definitions = Readonly<Record<string, JsonSchema>>

/** zod's own writing, with what it names put in its place and what forms do not read left out. */
function plain(schema: JsonSchema, definitions: Definitions): unknown {
  const name = schema.$ref?.replace('#/$defs/', '')
  if (name !== undefined)
    return { ...(plain(definitions[name] ?? {}, definitions) as object), ...own(schema) }
  const { properties, items, anyOf, oneOf, allOf } = schema
  const [only, ...others] = allOf ?? []
  if (only && others.length === 0) {
    return { ...(plain(only, definitions) as object), ...own(schema) }
  }
  const variants = anyOf ?? oneOf
  return {
    ...own(schema),
    ...(properties && {
      properties: Object.fromEntries(
        Object.entries(properties).map(([key, value]) => [key, plain(value, definitions)]),
      ),
    }),
    ...(items && { items: plain(items, definitions) }),
    ...(variants && { anyOf: variants.map((variant) => plain(variant, definitions)) }),
  }
}

/** What forms read of one schema, without what is below it. */
function own(schema: JsonSchema): object {
  const {
    type,
    description,
    default: preset,
    enum: values,
    const: only,
    required,
    examples,
  } = schema
  const kept = { type, description, default: preset, enum: values, const: only, required, examples }
  return Object.fromEntries(
    Object.entries(kept).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  )
}

describe('the part of JSON Schema that forms read', () => {
  it.each(operations.map((entry) => [entry.name, entry] as const))(
    'is for %s what zod writes itself',
    (_, { input }) => {
      const written = z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }) as JsonSchema
      expect(plain(schemaOf(input), {})).toEqual(plain(written, written.$defs ?? {}))
    },
  )
})
