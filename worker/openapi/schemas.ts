import * as z from 'zod'

export type Json = null | boolean | number | string | readonly Json[] | JsonObject
export interface JsonObject {
  readonly [name: string]: Json
}

export const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * JSON Schemas of zod schemas, with the parts that they share moved to one place.
 *
 * OpenAPI 3.1 is JSON Schema 2020-12, so only the addresses of the shared parts change.
 */
export class SchemaShelf {
  readonly #shared = new Map<string, string>()

  /** The schema; its named parts go to the shelf. @throws {Error} when two different parts bear one name. */
  add(schema: z.ZodType, io: 'input' | 'output'): JsonObject {
    const made = z.toJSONSchema(schema, { io }) as unknown as JsonObject
    const { $defs, $schema: _, ...own } = made
    for (const [name, part] of Object.entries(($defs ?? {}) as JsonObject)) {
      const text = JSON.stringify(readdressed(part))
      const before = this.#shared.get(name)
      if (before !== undefined && before !== text) {
        throw new Error(`Two different schemas are called ${name}.`)
      }
      this.#shared.set(name, text)
    }
    return readdressed(own) as JsonObject
  }

  /** All shared parts by name. */
  shared(): Readonly<Record<string, JsonObject>> {
    const sorted = [...this.#shared].sort(([a], [b]) => a.localeCompare(b))
    return Object.fromEntries(sorted.map(([name, text]) => [name, JSON.parse(text) as JsonObject]))
  }
}

function readdressed(part: Json): Json {
  if (Array.isArray(part)) return part.map(readdressed)
  if (typeof part !== 'object' || part === null) return part
  return Object.fromEntries(
    Object.entries(part).map(([name, value]) =>
      name === '$ref' && typeof value === 'string'
        ? [name, value.replace(/^#\/\$defs\//u, '#/components/schemas/')]
        : [name, readdressed(value)],
    ),
  )
}
