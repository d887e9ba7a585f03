import * as z from 'zod'
import type { Cell } from '../../shared/csv.ts'
import type { JsonSchema } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { jsonText } from '../../shared/visible.ts'

export interface CsvColumns {
  /** Dotted names in the order of the schema. */
  readonly names: readonly string[]
  /** Puts the figures of a result into their cells, the first column at `start`. */
  fill(result: unknown, cells: Cell[], start: number): void
}

/** A place in a result: a column of its own, parts below it, or both where it may be either. */
interface Place {
  column: number | undefined
  readonly parts: Map<string, Place>
}

const place = (): Place => ({ column: undefined, parts: new Map() })

/**
 * Columns of an operation's result: a figure each; lists and tables, of which nobody knows how long they
 * get, as JSON in one cell.
 *
 * @param both - Whether quantities bring the other unit system along; else it has no columns.
 */
export function csvColumns(operation: Operation, both: boolean): CsvColumns {
  const schema = z.toJSONSchema(operation.output, {
    io: 'output',
    unrepresentable: 'any',
  }) as Schema
  const root = place()
  const names: string[] = []
  grow(root, schema.properties?.result ?? {}, '', { names, definitions: schema.$defs ?? {}, both })
  return { names, fill: (result, cells, start) => fill(root, result, cells, start) }
}

interface Schema extends JsonSchema {
  readonly additionalProperties?: boolean | JsonSchema
}

interface Growth {
  readonly names: string[]
  readonly definitions: Readonly<Record<string, JsonSchema>>
  readonly both: boolean
}

function grow(at: Place, schema: JsonSchema, name: string, growth: Growth): void {
  const id = schema.$ref?.replace('#/$defs/', '')
  if (id !== undefined) {
    grow(at, growth.definitions[id] ?? {}, name, growth)
  } else if (schema.anyOf ?? schema.oneOf) {
    for (const variant of schema.anyOf ?? schema.oneOf ?? []) grow(at, variant, name, growth)
  } else if (schema.properties) {
    for (const [key, part] of Object.entries(schema.properties)) {
      if (key === 'also' && !growth.both) continue
      const below = at.parts.get(key) ?? place()
      at.parts.set(key, below)
      grow(below, part, name === '' ? key : `${name}.${key}`, growth)
    }
  } else if (at.column === undefined) {
    at.column = growth.names.length
    growth.names.push(name)
  }
}

function fill({ column, parts }: Place, value: unknown, cells: Cell[], start: number): void {
  if (value === undefined || value === null) return
  if (typeof value !== 'object') {
    if (column !== undefined) cells[start + column] = value as Cell
  } else if (Array.isArray(value) || parts.size === 0) {
    if (column !== undefined) cells[start + column] = jsonText(value)
  } else {
    for (const [key, part] of parts) {
      fill(part, (value as Readonly<Record<string, unknown>>)[key], cells, start)
    }
  }
}
