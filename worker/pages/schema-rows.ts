import { isObject, type Json, type JsonObject } from '../openapi/schemas.ts'

/** One line of a table of fields. */
export interface FieldRow {
  /** Dotted; `[]` for the items of a list. */
  readonly name: string
  readonly needed: boolean
  readonly kind: string
  readonly description: string
  readonly examples: string
}

export const list = (value: Json | undefined): readonly Json[] =>
  Array.isArray(value) ? value : []

/** Named schemas that a table names and does not unfold: quantities and the parts of every answer. */
const CLOSED: ReadonlySet<string> = new Set(['Quantity', 'Caution', 'Source'])
const DEEPEST = 4

/** The fields of an object schema, those of nested objects below them. */
export function fieldRows(
  schema: JsonObject,
  schemas: JsonObject,
  prefix = '',
  depth = 0,
): readonly FieldRow[] {
  const { target } = resolved(schema, schemas)
  if (depth > DEEPEST) return []
  const variants = [...list(target.anyOf), ...list(target.oneOf)].filter(isObject)
  const properties = isObject(target.properties) ? target.properties : undefined
  if (!properties) {
    const rows = variants.flatMap((variant) => fieldRows(variant, schemas, prefix, depth + 1))
    return [...new Map(rows.map((row) => [row.name, row])).values()]
  }
  const needed = list(target.required)
  return Object.entries(properties).flatMap(([name, property]) => {
    if (!isObject(property)) return []
    const { target: part, named } = resolved(property, schemas)
    const row: FieldRow = {
      name: prefix + name,
      needed: needed.includes(name),
      kind: kindOf(property, schemas),
      description: wordsOf(property, part, named),
      examples: list(part.examples).slice(0, 2).map(String).join(', '),
    }
    if (named !== undefined && (CLOSED.has(named) || isQuantity(part))) return [row]
    const items = isObject(part.items) ? part.items : undefined
    const itemName = items ? resolved(items, schemas).named : undefined
    if (itemName !== undefined && CLOSED.has(itemName)) return [row]
    const below = items
      ? fieldRows(items, schemas, `${prefix}${name}[].`, depth + 1)
      : fieldRows(part, schemas, `${prefix}${name}.`, depth + 1)
    return [row, ...below]
  })
}

function resolved(
  schema: JsonObject,
  schemas: JsonObject,
): { readonly target: JsonObject; readonly named: string | undefined } {
  const named =
    typeof schema.$ref === 'string' ? schema.$ref.replace('#/components/schemas/', '') : undefined
  const found = named === undefined ? undefined : schemas[named]
  return { target: isObject(found) ? found : schema, named }
}

/** An input quantity: a text or a pair, which needs no unfolding. */
export const isQuantity = (schema: JsonObject) =>
  list(schema.anyOf).some((variant) => isObject(variant) && variant.type === 'string')

/** What a shared schema says of itself is said once, where it is explained. */
function wordsOf(property: JsonObject, part: JsonObject, named: string | undefined): string {
  const own = property.description
  if (typeof own === 'string') return own
  return named === undefined && typeof part.description === 'string' ? part.description : ''
}

const WORDS: Readonly<Record<string, string>> = {
  string: 'text',
  boolean: 'true or false',
  integer: 'whole number',
  array: 'list',
}

/** What a schema takes, in a word or its choices. */
export function kindOf(schema: JsonObject, schemas: JsonObject): string {
  const { target, named } = resolved(schema, schemas)
  if (named !== undefined) return named
  const choices = list(target.enum)
  if (choices.length > 0) return choices.map(String).join(', ')
  if (target.const !== undefined) return String(target.const)
  if (isObject(target.items)) return `list of ${kindOf(target.items, schemas)}`
  const variants = [...list(target.anyOf), ...list(target.oneOf)].filter(isObject)
  if (variants.length > 0) {
    return [...new Set(variants.map((variant) => kindOf(variant, schemas)))].join(' or ')
  }
  const type = typeof target.type === 'string' ? target.type : 'anything'
  return WORDS[type] ?? type
}
