import type * as z from 'zod'
import type { PlainInput } from './operation.ts'
import { plainQuantity } from './quantity/parse.ts'
import { takenBy } from './quantity/schema.ts'

type Fields = Readonly<Record<string, z.ZodType>>

/** How one field is read; undefined for what its schema, or that of the whole, must look at. */
type Reader = (value: unknown) => unknown

/**
 * Reads inputs as most are: no field unknown or missing, each well. The schema of the whole runs through
 * every field that there might be, this through those that are given.
 *
 * @param fields - Those of the step.
 * @param beside - Those of the frame.
 * @returns What the schema would give; nothing for what it must look at, every refusal among it.
 */
export function plainInput(
  fields: Fields,
  beside: Fields,
): (raw: unknown) => PlainInput | undefined {
  const all = Object.entries({ ...fields, ...beside })
  const names = all.map(([name]) => name)
  const places = new Map(names.map((name, at) => [name, at]))
  const readers = all.map(([, schema]) => readerOf(schema))
  const absent = all.map(([, schema]) => absentOf(schema))
  const ownFields = Object.keys(fields).length
  return (raw) => {
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return undefined
    const values = absent.slice()
    for (const name in raw) {
      const at = places.get(name) ?? -1
      const value = readers[at]?.((raw as Readonly<Record<string, unknown>>)[name])
      if (value === undefined) return undefined
      values[at] = value
    }
    const found: Record<'own' | 'beside', Record<string, unknown>> = { own: {}, beside: {} }
    for (let at = 0; at < names.length; at += 1) {
      const value = values[at]
      if (value === MISSING) return undefined
      if (value !== undefined) found[at < ownFields ? 'own' : 'beside'][names[at] as string] = value
    }
    return found
  }
}

/** What a schema is made of, as far as it is asked here. */
interface Definition {
  readonly type: string
  readonly innerType?: z.ZodType
  /** Of a pipe, with the transformation at its end. */
  readonly out?: z.ZodType
  readonly transform?: object
  /** Further rules. */
  readonly checks?: readonly unknown[]
}

const definitionOf = (schema: z.ZodType) => schema.def as Definition

/** Stands for a field that cannot be left out, or not without its schema. */
const MISSING = Symbol('missing')

/** What stands for a field that is not given. */
function absentOf(schema: z.ZodType): unknown {
  const { type, innerType } = definitionOf(schema)
  const inner = innerType && definitionOf(innerType).type
  if (type === 'optional') return inner === 'default' || inner === 'prefault' ? MISSING : undefined
  const preset = type === 'default' ? schema.parse(undefined) : MISSING
  // Of another object each time the schema takes care.
  return typeof preset === 'object' ? MISSING : preset
}

function readerOf(schema: z.ZodType): Reader {
  const { type, innerType, out, checks = [] } = definitionOf(schema)
  // A field that is given need not be optional.
  if (type === 'optional' && innerType && checks.length === 0) return readerOf(innerType)
  const { transform } = out && checks.length === 0 ? definitionOf(out) : {}
  const accepted = transform && takenBy.get(transform)
  if (accepted) return (raw) => (typeof raw === 'string' ? unrefused(raw, accepted) : undefined)
  return (raw) => {
    const parsed = schema.safeParse(raw)
    return parsed.success ? parsed.data : undefined
  }
}

/** A refusal comes from the schema, with the path of its field. */
function unrefused(...[raw, accepted]: Parameters<typeof plainQuantity>): unknown {
  try {
    return plainQuantity(raw, accepted)
  } catch {
    return undefined
  }
}
