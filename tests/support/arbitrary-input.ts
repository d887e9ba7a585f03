import fc from 'fast-check'
import * as z from 'zod'
import type { JsonSchema } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { type Kind, UNITS } from '../../shared/quantity/kinds.ts'
import { refrigerants } from '../../shared/refrigerant/index.ts'

/** What a person may write for a kind, in SI: everyday first, then far outside. */
const RANGES: Readonly<
  Record<string, readonly [kinds: readonly Kind[], low: number, high: number]>
> = {
  Temperature: [['temperature'], 230, 370],
  TemperatureDifference: [['temperatureDifference'], 0.1, 60],
  Pressure: [['gaugePressure', 'absolutePressure'], 1e4, 3e6],
  BarometricPressure: [['barometricPressure'], 7e4, 1.05e5],
  PressureDifference: [['pressureDifference'], 10, 1e6],
  Mass: [['mass'], 0.05, 30],
  Volume: [['volume'], 1e-6, 0.05],
  Altitude: [['altitude'], 10, 5e3],
  Length: [['length'], 1e-3, 2e3],
  Duration: [['duration'], 10, 1e5],
  Density: [['density'], 1, 1500],
  MassPerLength: [['massPerLength'], 1e-3, 1],
  VolumeFlow: [['volumeFlow'], 1e-5, 1e-1],
  MassFlow: [['massFlow'], 1e-12, 1e-1],
  LeakRate: [['leakRate'], 1e-9, 1e-3],
  Fraction: [['fraction'], 0, 1],
}

const EXTREME = [0, 1e-300, 1e-12, 1e-6, 1e6, 1e12, 1e300, -1, -1e6]

/** A quantity of one of the kinds, as a text or as an object. */
function quantityOf(kinds: readonly Kind[], low: number, high: number): fc.Arbitrary<unknown> {
  const unit = fc.constantFrom(...kinds.flatMap((kind) => UNITS[kind]))
  const everyday = fc
    .tuple(unit, fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([{ symbol, factor, offset }, share]) => {
      const si = low * (high / Math.max(low, 1e-12)) ** share
      const value = (si - offset) / factor
      return { value: Number(value.toPrecision(4)), unit: symbol }
    })
  const extreme = fc
    .tuple(unit, fc.constantFrom(...EXTREME))
    .map(([{ symbol }, value]) => ({ value, unit: symbol }))
  const band = fc.option(fc.constantFrom(0, 0.1, 2, 1e9), { nil: undefined, freq: 4 })
  return fc
    .tuple(
      fc.oneof({ weight: 8, arbitrary: everyday }, { weight: 1, arbitrary: extreme }),
      band,
      fc.boolean(),
    )
    .map(([{ value, unit: symbol }, plusMinus, asText]) => {
      if (asText)
        return plusMinus === undefined ? `${value} ${symbol}` : `${value} ±${plusMinus} ${symbol}`
      return plusMinus === undefined ? { value, unit: symbol } : { value, unit: symbol, plusMinus }
    })
}

const NAMES = refrigerants().map(({ id }) => id)
const TEXTS = [
  '',
  'PAG 46',
  'POE',
  'mineral',
  '2023-04',
  '2026-11-25',
  'empty',
  '#8',
  '3/8 in',
  'é½',
  '１２',
]

/** Schemas by the reference that leads to them. */
type Definitions = (reference: string) => JsonSchema | undefined

interface Limits extends JsonSchema {
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly minItems?: number
  readonly maxItems?: number
  readonly additionalProperties?: boolean | JsonSchema
}

function anyValue(schema: Limits, definitions: Definitions, name: string): fc.Arbitrary<unknown> {
  if (schema.$ref !== undefined) {
    const range = RANGES[schema.$ref.split('/').at(-1) ?? '']
    if (range) return quantityOf(...range)
    return anyValue(definitions(schema.$ref) ?? {}, definitions, name)
  }
  if (schema.const !== undefined) return fc.constant(schema.const)
  if (schema.enum) return fc.constantFrom(...schema.enum)
  const variants = schema.anyOf ?? schema.oneOf
  if (variants) return variantOf(schema, variants, definitions, name)
  switch (schema.type) {
    case 'object':
      return objectOf(schema, definitions)
    case 'array':
      return fc.array(anyValue(schema.items ?? {}, definitions, name), {
        minLength: Math.min(schema.minItems ?? 0, 12),
        maxLength: Math.min(schema.maxItems ?? 6, 12),
      })
    case 'boolean':
      return fc.boolean()
    case 'number':
    case 'integer':
      return numberOf(schema)
    default:
      return textOf(name)
  }
}

/** Quantities that a step describes by itself carry examples, which tell the units they take. */
function variantOf(
  schema: Limits,
  variants: readonly JsonSchema[],
  definitions: Definitions,
  name: string,
): fc.Arbitrary<unknown> {
  const examples = (schema.examples ?? []).filter((example) => typeof example === 'string')
  const [first, ...others] = variants.map((variant) => anyValue(variant, definitions, name))
  if (!first) return fc.constant(null)
  if (examples.length > 0) return fc.oneof(fc.constantFrom(...examples), first, ...others)
  return fc.oneof(first, ...others)
}

function numberOf({ type, minimum, maximum, exclusiveMinimum }: Limits): fc.Arbitrary<number> {
  const min = Math.max(minimum ?? exclusiveMinimum ?? -1e9, -1e9)
  const max = Math.max(Math.min(maximum ?? 1e9, 1e9), min)
  if (type === 'integer') {
    const whole = { min: Math.ceil(min), max: Math.floor(max) }
    return fc.oneof(
      fc.integer(whole),
      fc.integer({ ...whole, max: Math.min(whole.max, whole.min + 9) }),
    )
  }
  return fc.oneof(
    fc.double({ min, max, noNaN: true }),
    fc.double({ min, max: Math.min(max, min + 10), noNaN: true }),
  )
}

function textOf(name: string): fc.Arbitrary<string> {
  const named = /refrigerant|holds|fluid/iu.test(name)
  return fc.oneof(
    { weight: named ? 12 : 2, arbitrary: fc.constantFrom(...NAMES) },
    { weight: named ? 1 : 4, arbitrary: fc.constantFrom(...TEXTS) },
    { weight: 1, arbitrary: fc.string({ maxLength: 12, unit: 'grapheme' }) },
  )
}

function objectOf(schema: Limits, definitions: Definitions): fc.Arbitrary<unknown> {
  const properties = Object.entries(schema.properties ?? {})
  const arbitraries = Object.fromEntries(
    properties.map(([name, property]) => [name, anyValue(property, definitions, name)]),
  )
  if (properties.length === 0) return fc.constant({})
  return fc.record(arbitraries, { requiredKeys: [...(schema.required ?? [])] })
}

/**
 * Inputs of an operation: what its schema allows, its example with some fields changed or gone, and
 * its example with one field changed, added or gone.
 *
 * The later kinds get past the first refusal more often, so that the calculation itself is tried.
 */
export function arbitraryInput(operation: Operation): fc.Arbitrary<Record<string, unknown>> {
  const schema = z.toJSONSchema(operation.input, { io: 'input', unrepresentable: 'any' }) as Limits
  return inputLike(
    schema,
    (reference) => schema.$defs?.[reference.replace('#/$defs/', '')],
    operation.example,
  )
}

/** The same from a JSON Schema, whoever made it. */
export function inputLike(
  schema: JsonSchema,
  definitions: Definitions,
  example: Readonly<Record<string, unknown>>,
): fc.Arbitrary<Record<string, unknown>> {
  const wild = objectOf(schema, definitions) as fc.Arbitrary<Record<string, unknown>>
  const kept = fc.record(
    Object.fromEntries(
      Object.keys(example).map((name) => [name, fc.constantFrom(0, 1, 2, 3, 4, 5, 6, 7)]),
    ),
  )
  const near = fc.tuple(wild, kept).map(([other, choice]) => {
    const mixed: Record<string, unknown> = { ...example }
    for (const [name, fate] of Object.entries(choice)) {
      if (fate === 0 && name in other) mixed[name] = other[name]
      if (fate === 1) delete mixed[name]
    }
    const extra = Object.keys(other).find((name) => !(name in mixed))
    return extra === undefined ? mixed : { ...mixed, [extra]: other[extra] }
  })
  const names = [...new Set([...Object.keys(schema.properties ?? {}), ...Object.keys(example)])]
  const nearest = fc.tuple(wild, fc.constantFrom(...names)).map(([other, name]) => {
    const { [name]: _, ...rest } = example
    return name in other ? { ...rest, [name]: other[name] } : rest
  })
  return fc.oneof(wild, near, nearest)
}
