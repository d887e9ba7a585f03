import * as z from 'zod'
import { plainReaderOf } from './quantity/schema.ts'

type Fields = Readonly<Record<string, z.ZodType>>

/** An input that was read: the fields of the step, and those beside them. */
export interface PlainInput {
  readonly own: Readonly<Record<string, unknown>>
  readonly beside: Readonly<Record<string, unknown>>
}

/**
 * Reads inputs as most are: no field unknown or missing, each well. The schema of the whole runs through
 * every field that there might be, this through those that are given.
 *
 * @returns What the schema would give; nothing for what it must look at, every refusal among it.
 */
export function plainInput(
  fields: Fields,
  beside: Fields,
): (raw: unknown) => PlainInput | undefined {
  let read: ((raw: object) => PlainInput | undefined) | undefined
  return (raw) => {
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return undefined
    read ??= readerOf(fields, beside)
    return read(raw)
  }
}

function readerOf(fields: Fields, beside: Fields): (raw: object) => PlainInput | undefined {
  const all = Object.entries({ ...fields, ...beside })
  const names = all.map(([name]) => name)
  const places = new Map(names.map((name, at) => [name, at]))
  const readers = all.map(([, schema]) => plainReaderOf(schema) ?? parsedBy(schema))
  const absent = all.map(([, schema]) => absentOf(schema))
  const ownFields = Object.keys(fields).length
  return (raw) => {
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

/** Stands for a field that cannot be left out, or not without its schema. */
const MISSING = Symbol('missing')

/** What stands for a field that is not given. */
function absentOf(schema: z.ZodType): unknown {
  if (schema instanceof z.ZodOptional)
    return schema.unwrap() instanceof z.ZodDefault ? MISSING : undefined
  const given = schema instanceof z.ZodDefault ? schema.parse(undefined) : MISSING
  // Of another object each time the schema takes care.
  return typeof given === 'object' ? MISSING : given
}

const parsedBy = (schema: z.ZodType) => (raw: unknown) => {
  const parsed = schema.safeParse(raw)
  return parsed.success ? parsed.data : undefined
}
