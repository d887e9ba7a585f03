import * as z from 'zod'

/** The part of JSON Schema that the input schemas use. */
export interface JsonSchema {
  readonly $ref?: string
  readonly $defs?: Readonly<Record<string, JsonSchema>>
  readonly type?: string
  readonly description?: string
  readonly default?: unknown
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly required?: readonly string[]
  readonly items?: JsonSchema
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
  readonly allOf?: readonly JsonSchema[]
  readonly examples?: readonly unknown[]
}

/** What is read of a schema: its parts differ by its type. */
interface Definition {
  readonly type: string
  readonly innerType?: z.core.$ZodType
  readonly in?: z.core.$ZodType
  readonly element?: z.core.$ZodType
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>
  readonly options?: readonly z.core.$ZodType[]
  readonly entries?: Readonly<Record<string, unknown>>
  readonly values?: readonly unknown[]
  readonly defaultValue?: unknown
}

/**
 * What a schema takes, as the part of JSON Schema that the forms of doors are made from.
 *
 * zod's own `toJSONSchema` says the same at more length, and its code weighs more on a phone than any
 * operation does; a test holds the two equal for every operation.
 */
export function schemaOf(schema: z.core.$ZodType): JsonSchema {
  return { ...bare(schema), ...(z.globalRegistry.get(schema) as JsonSchema | undefined) }
}

function bare(schema: z.core.$ZodType): JsonSchema {
  const {
    type,
    innerType,
    in: from,
    element,
    shape,
    options,
    entries,
    values,
    defaultValue,
  } = schema._zod.def as Definition
  if (innerType) {
    const inner = schemaOf(innerType)
    // Of what is transformed on its way in, the preset is not what one would write.
    const written = type === 'default' && innerType._zod.def.type !== 'pipe'
    return written ? { ...inner, default: defaultValue } : inner
  }
  if (from) return schemaOf(from)
  if (element) return { type: 'array', items: schemaOf(element) }
  if (shape) return objectOf(shape)
  if (options) return { anyOf: options.map(schemaOf) }
  if (entries) return { type: 'string', enum: Object.values(entries) }
  if (values) return literal(values)
  if (type === 'number') return { type: isWhole(schema) ? 'integer' : 'number' }
  return type === 'string' || type === 'boolean' ? { type } : {}
}

function objectOf(shape: Readonly<Record<string, z.core.$ZodType>>): JsonSchema {
  const entries = Object.entries(shape)
  return {
    type: 'object',
    properties: Object.fromEntries(entries.map(([name, inner]) => [name, schemaOf(inner)])),
    required: entries.flatMap(([name, inner]) => (inner._zod.optin === undefined ? [name] : [])),
  }
}

const literal = (values: readonly unknown[]): JsonSchema => {
  const [only, ...others] = values
  return { type: typeof only, ...(others.length === 0 ? { const: only } : { enum: values }) }
}

/** By its own format, or by that of a check behind it. */
const isWhole = (schema: z.core.$ZodType) => {
  const { format, checks = [] } = schema._zod.def as {
    readonly format?: string
    readonly checks?: readonly { readonly _zod: { readonly def: { readonly format?: string } } }[]
  }
  return [format, ...checks.map(({ _zod }) => _zod.def.format)].some((name) =>
    name?.includes('int'),
  )
}
