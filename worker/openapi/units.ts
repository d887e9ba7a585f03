import { KINDS, type Kind, UNITS } from '../../shared/quantity/index.ts'
import { getOf, json, list, object, text } from './parts.ts'
import { isObject, type Json, type JsonObject } from './schemas.ts'

/** Kinds that an input schema takes, by its name: that of the kind, save where gauge and absolute go together. */
function kindsOf(schema: string): readonly Kind[] {
  if (schema === 'Pressure') return ['gaugePressure', 'absolutePressure']
  return KINDS.filter((kind) => kind.toLowerCase() === schema.toLowerCase())
}

const symbolsOf = (kinds: readonly Kind[]) => [
  ...new Set(kinds.flatMap((kind) => UNITS[kind].map(({ symbol }) => symbol))),
]

/** The units of a quantity's schema by name, or of any quantity. Other spellings are read as well; these are written. */
export function unitSchema(schema: string): JsonObject {
  const kinds = kindsOf(schema)
  return {
    type: 'string',
    enum: symbolsOf(kinds.length > 0 ? kinds : KINDS),
    description: 'Unit, by its symbol; GET /v1/units has other spellings that are read',
  }
}

/** Puts the units of their kind into the schemas of quantities, shared as `<Schema>Unit`. */
export function withUnits(schemas: JsonObject): JsonObject {
  const units: Record<string, Json> = { Unit: unitSchema('') }
  const own = Object.entries(schemas).map(([name, schema]): [string, Json] => {
    if (kindsOf(name).length > 0) units[`${name}Unit`] = unitSchema(name)
    const at = kindsOf(name).length > 0 ? `${name}Unit` : 'Unit'
    return [name, isQuantitySchema(name, schema) ? replaced(schema, at) : schema]
  })
  return { ...Object.fromEntries(own), ...units }
}

const isQuantitySchema = (name: string, schema: Json | undefined) =>
  name === 'Quantity' ||
  (isObject(schema) &&
    Array.isArray(schema.anyOf) &&
    schema.anyOf.some((part) => isObject(part) && isUnitField(part.properties)))

const isUnitField = (properties: Json | undefined) =>
  isObject(properties) && isObject(properties.unit) && properties.unit.type === 'string'

function replaced(part: Json, unit: string): Json {
  if (Array.isArray(part)) return part.map((item) => replaced(item, unit))
  if (!isObject(part)) return part
  return Object.fromEntries(
    Object.entries(part).map(([name, value]) =>
      name === 'properties' && isUnitField(value) && isObject(value)
        ? [name, { ...(replaced(value, unit) as JsonObject), unit: ref(unit) }]
        : [name, replaced(value, unit)],
    ),
  )
}

const ref = (name: string): JsonObject => ({ $ref: `#/components/schemas/${name}` })

export const unitPaths = (): JsonObject => ({
  '/v1/units': getOf({
    operationId: 'list-units',
    tags: ['service'],
    summary: 'How quantities are written: the units of each kind',
    description:
      'SI value = value × factor + offset. Gauge and absolute pressure are different kinds, joined by the barometer.',
    answer: {
      description: 'The kinds of quantity, each with its units.',
      ...json(
        object({
          kinds: list(
            object({
              kind: text('What is measured'),
              name: text('The same in words'),
              examples: list(text('A quantity'), 'As people write it'),
              units: list(
                object({
                  symbol: { ...ref('Unit'), description: 'How it is printed, and read' },
                  factor: { type: 'number', description: 'To SI' },
                  offset: { type: 'number', description: 'To SI, of temperatures and vacuum' },
                  spellings: list(text('A spelling'), 'Others that are read; case does not count'),
                }),
                'Those that are printed and read',
              ),
            }),
            'What can be measured',
          ),
        }),
      ),
    },
  }),
})
