import { isObject, type Json, type JsonObject } from './schemas.ts'

/** Schemas by name, as the document has them under `components`. */
export type Schemas = Readonly<Record<string, JsonObject>>

const at = (schemas: Schemas, reference: Json | undefined): JsonObject | undefined =>
  typeof reference === 'string'
    ? schemas[reference.replace('#/components/schemas/', '')]
    : undefined

type Change = (property: JsonObject, name: string) => JsonObject

/** Applies a change to every property of every object in a schema, the innermost first. */
function changed(part: Json, change: Change): Json {
  if (Array.isArray(part)) return part.map((item) => changed(item, change))
  if (!isObject(part)) return part
  return Object.fromEntries(
    Object.entries(part).map(([key, value]) => {
      const inner = changed(value, change)
      if (key !== 'properties' || !isObject(inner)) return [key, inner]
      const properties = Object.entries(inner).map(([name, property]) => [
        name,
        isObject(property) ? change(property, name) : property,
      ])
      return [key, Object.fromEntries(properties)]
    }),
  )
}

const each = (schemas: Schemas, change: Change): Schemas =>
  Object.fromEntries(
    Object.entries(schemas).map(([name, schema]) => [name, changed(schema, change) as JsonObject]),
  )

/**
 * Says in words what is assumed where an input leaves a field out.
 *
 * As `default` it makes generated clients ask for the field: their generators read a default as a promise
 * about answers.
 */
export const withoutDefaults = (schemas: Schemas): Schemas =>
  each(schemas, ({ default: preset, ...property }) => {
    if (preset === undefined) return property
    const words = typeof property.description === 'string' ? property.description : ''
    const said = `${typeof preset === 'string' ? preset : JSON.stringify(preset)} if not given`
    return { ...property, description: words === '' ? said : `${words}; ${said}` }
  })

/** A field that neither says what it is nor leads to what does gets the words of its name. */
export const described = (schemas: Schemas): Schemas =>
  each(schemas, (property, name) =>
    property.description !== undefined || at(schemas, property.$ref)?.description !== undefined
      ? property
      : { ...property, description: wordsOf(name) },
  )

/** `suctionTemperature` to "Suction temperature". */
function wordsOf(name: string): string {
  const words = name.replace(/([a-z0-9])([A-Z])/gu, '$1 $2').toLowerCase()
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** "work-order" and "WorkOrder" are one operation. */
const inputOf = (schemas: Schemas, operation: string): readonly [string, JsonObject] | undefined =>
  Object.entries(schemas).find(
    ([name]) => name.toLowerCase() === `${operation.replaceAll('-', '')}input`,
  )

/**
 * Where an order passes fields on to a step, their schema is that of the step; in a section none is needed,
 * since the order knows much of it already.
 */
export function withPassedFields(schemas: Schemas): Schemas {
  return each(schemas, (property, name) => {
    const words = typeof property.description === 'string' ? property.description : ''
    const whole = /^Fields of the operation ([a-z-]+)/u.exec(words)?.[1]
    const single = /^As in the operation ([a-z-]+)/u.exec(words)?.[1]
    if (whole !== undefined) return sectionOf(schemas, whole, property)
    return single === undefined ? property : (fieldOf(schemas, single, name) ?? property)
  })
}

function sectionOf(schemas: Schemas, operation: string, property: JsonObject): JsonObject {
  const [type, input] = inputOf(schemas, operation) ?? []
  if (type === undefined || !isObject(input?.properties)) return property
  const names = Object.keys(input.properties).filter((name) => !['units', 'precise'].includes(name))
  return {
    type: 'object',
    ...(property.description === undefined ? {} : { description: property.description }),
    properties: Object.fromEntries(
      names.map((name) => [name, { $ref: `#/components/schemas/${type}/properties/${name}` }]),
    ),
    additionalProperties: false,
  }
}

/** The field of that name in a list of the operation's input; its schema and no reference, since generators follow none into lists. */
function fieldOf(schemas: Schemas, operation: string, name: string): JsonObject | undefined {
  const [, input] = inputOf(schemas, operation) ?? []
  if (!isObject(input?.properties)) return undefined
  for (const part of Object.values(input.properties)) {
    const items = isObject(part) && isObject(part.items) ? part.items : undefined
    const field = isObject(items?.properties) ? items.properties[name] : undefined
    if (isObject(field)) return field
  }
  return undefined
}
