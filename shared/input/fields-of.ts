import type { Operation } from '../operation.ts'
import type { Field, Shape } from './field.ts'
import { type JsonSchema, schemaOf } from './schema-of.ts'

/** Whatever has an input: an operation, or how a picture is to be drawn. */
type WithInput = Pick<Operation, 'input'>

const known = new WeakMap<WithInput, readonly Field[] | (() => readonly Field[])>()

/** Says where the fields of an input are at hand already: a program that is built reads no schema for them. */
export const keepFields = (operation: WithInput, fields: () => readonly Field[]): void =>
  void known.set(operation, fields)

/** Fields of an operation's input in the order of its schema, for doors that read text. */
export function fieldsOf(operation: WithInput): readonly Field[] {
  const before = known.get(operation)
  if (typeof before === 'object') return before
  const fields = before ? before() : fieldsOfObject(schemaOf(operation.input))
  known.set(operation, fields)
  return fields
}

function fieldsOfObject(schema: JsonSchema): readonly Field[] {
  return Object.entries(schema.properties ?? {}).map(([name, property]) => {
    return {
      name,
      description: property.description ?? '',
      required: schema.required?.includes(name) ?? false,
      preset: property.default,
      shape: shapeOf(property),
    }
  })
}

function shapeOf(schema: JsonSchema): Shape {
  const variants = schema.anyOf
  if (variants) return shapeOfVariants(schema, variants)
  const choices = choicesOf(schema)
  if (choices) return { type: 'choice', choices }
  if (schema.properties) return { type: 'record', fields: fieldsOfObject(schema) }
  if (schema.items) return { type: 'list', item: shapeOf(schema.items) }
  if (schema.type === 'boolean') return { type: 'flag' }
  if (schema.type === 'number' || schema.type === 'integer') {
    const values = schema.const === undefined ? schema.enum : [schema.const]
    const integer = schema.type === 'integer' || (values?.every(Number.isInteger) ?? false)
    return { type: 'number', integer }
  }
  return schema.type === 'string' ? { type: 'text' } : anything(schema)
}

const anything = (schema: JsonSchema): Shape => ({ type: 'any', examples: textExamples(schema) })

const textExamples = (schema: JsonSchema): readonly string[] =>
  (schema.examples ?? []).filter((example) => typeof example === 'string')

function choicesOf(schema: JsonSchema): readonly string[] | undefined {
  if (typeof schema.const === 'string') return [schema.const]
  const texts = schema.enum?.filter((value) => typeof value === 'string')
  return texts && texts.length > 0 && texts.length === schema.enum?.length ? texts : undefined
}

function shapeOfVariants(schema: JsonSchema, variants: readonly JsonSchema[]): Shape {
  if (isQuantity(variants)) return { type: 'quantity', examples: textExamples(schema) }
  const shapes = variants.map(shapeOf)
  const [first, ...others] = shapes
  if (first && others.length === 0) return first
  if (shapes.every((shape) => shape.type === 'choice')) {
    return { type: 'choice', choices: [...new Set(shapes.flatMap((shape) => shape.choices))] }
  }
  if (shapes.every((shape) => shape.type === 'number')) {
    return { type: 'number', integer: shapes.every((shape) => shape.integer) }
  }
  if (shapes.every((shape) => shape.type === 'record')) {
    return { type: 'record', fields: mergeFields(shapes.map((shape) => shape.fields)) }
  }
  return anything(schema)
}

/** Text with its unit, or an object with value and unit: how shared/quantity describes its inputs. */
function isQuantity(variants: readonly JsonSchema[]): boolean {
  const pair = variants.find((variant) => variant.properties)
  return (
    variants.length === 2 &&
    variants.some((variant) => variant.type === 'string') &&
    pair?.properties?.value !== undefined &&
    pair.properties.unit !== undefined
  )
}

/** All fields that any variant has; required when every variant requires it. */
function mergeFields(variants: readonly (readonly Field[])[]): readonly Field[] {
  const names = [...new Set(variants.flatMap((fields) => fields.map((field) => field.name)))]
  return names.flatMap((name) => {
    const found = variants.flatMap((fields) => fields.filter((field) => field.name === name))
    const [first] = found
    if (!first) return []
    const choices = found.flatMap(({ shape }) => (shape.type === 'choice' ? shape.choices : []))
    const shape: Shape =
      first.shape.type === 'choice'
        ? { type: 'choice', choices: [...new Set(choices)] }
        : first.shape
    const required = found.length === variants.length && found.every((field) => field.required)
    return [{ ...first, shape, required }]
  })
}
