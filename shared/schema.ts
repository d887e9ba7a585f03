/**
 * The part of zod that the project uses, on zod's own core: the same schemas, methods, messages and
 * JSON Schemas, at half the weight. (zod's builders each carry every method and text format there is,
 * which no bundler can take out, and the service has a budget.)
 *
 *     import * as z from '../schema.ts'
 *
 * The types are zod's. A method that they promise and that is not made here is missing when its
 * schema is made, which is on loading, so that any test finds it: add it below.
 */
import type * as zod from 'zod'
import * as core from 'zod/v4/core'
import en from 'zod/v4/locales/en.js'

export type { input, output, ZodOptional, ZodType, ZodUnknown } from 'zod'
export type ZodObject<Shape extends core.$ZodShape = core.$ZodLooseShape> = zod.ZodObject<Shape>

export const NEVER: never = core.NEVER
export const toJSONSchema: typeof zod.toJSONSchema = core.toJSONSchema

// biome-ignore lint/suspicious/noExplicitAny: the checks fit whatever schema calls them, as in zod
type Any = any
type Params = string | undefined

const plain: core.$constructor<core.$ZodType> = core.$ZodType

const Type: core.$constructor<zod.ZodType> = core.$constructor<zod.ZodType>(
  'ZodType',
  (schema, def) => {
    if (!core.globalConfig.localeError) core.config(en())
    plain.init(schema, def)
    Object.assign(schema, { def, type: def.type })
  },
  {
    check(this: zod.ZodType, ...checks: Any[]) {
      const { def } = this._zod
      return this.clone({ ...def, checks: [...(def.checks ?? []), ...checks] }, { parent: true })
    },
    clone(this: zod.ZodType, def: Any, params: Any) {
      return core.clone(this, def, params)
    },
    optional(this: zod.ZodType) {
      return new Optional({ type: 'optional', innerType: this })
    },
    default(this: zod.ZodType, value: unknown) {
      return new Default({
        type: 'default',
        innerType: this,
        get defaultValue() {
          // Whoever got it may change it.
          return Array.isArray(value) ? [...value] : value
        },
      })
    },
    transform(this: zod.ZodType, change: Any) {
      return new Pipe({ type: 'pipe', in: this, out: transformer(change) })
    },
    describe(this: zod.ZodType, description: string) {
      return this.meta({ description })
    },
    meta(this: zod.ZodType, data: Any) {
      const copy = this.clone()
      core.globalRegistry.add(copy, data)
      return copy
    },
    parse(this: zod.ZodType, data: unknown) {
      return core.parse(this, data)
    },
    safeParse(this: zod.ZodType, data: unknown) {
      return core.safeParse(this, data)
    },
  } as Any,
)

/** A kind of schema: its core, the common methods, and what it has of its own. */
function kind<T extends zod.ZodType>(
  name: string,
  base: core.$constructor<Any>,
  own: Readonly<Record<string, (this: zod.ZodType, ...given: Any[]) => unknown>> = {},
): core.$constructor<T> {
  return core.$constructor<T>(
    name,
    (schema, def) => {
      base.init(schema, def)
      Type.init(schema, def)
    },
    own as Any,
  )
}

const lengths = {
  min(this: zod.ZodType, least: number, params: Params) {
    return this.check(core._minLength(least, params) as Any)
  },
  max(this: zod.ZodType, most: number, params: Params) {
    return this.check(core._maxLength(most, params) as Any)
  },
}

const Text = kind<zod.ZodString>('ZodString', core.$ZodString, {
  ...lengths,
  regex(pattern: RegExp, params: Params) {
    return this.check(core._regex(pattern, params) as Any)
  },
  trim() {
    return this.check(core._trim() as Any)
  },
  toLowerCase() {
    return this.check(core._toLowerCase() as Any)
  },
})
const Figure = kind<zod.ZodNumber>('ZodNumber', core.$ZodNumber, {
  min(least: number, params: Params) {
    return this.check(core._gte(least, params) as Any)
  },
  max(most: number, params: Params) {
    return this.check(core._lte(most, params) as Any)
  },
  nonnegative(params: Params) {
    return this.check(core._gte(0, params) as Any)
  },
  int(params: Params) {
    return this.check(core._int(Whole, params) as Any)
  },
})
const Whole = kind<zod.ZodNumberFormat>('ZodNumberFormat', core.$ZodNumberFormat)
const Flag = kind<zod.ZodBoolean>('ZodBoolean', core.$ZodBoolean)
const Unknown = kind<zod.ZodUnknown>('ZodUnknown', core.$ZodUnknown)
const Never = kind<zod.ZodNever>('ZodNever', core.$ZodNever)
const Literal = kind<zod.ZodLiteral>('ZodLiteral', core.$ZodLiteral)
const Enum = kind<zod.ZodEnum>('ZodEnum', core.$ZodEnum)
const List = kind<zod.ZodArray>('ZodArray', core.$ZodArray, lengths)
const Union = kind<zod.ZodUnion>('ZodUnion', core.$ZodUnion)
const Table = kind<zod.ZodRecord>('ZodRecord', core.$ZodRecord)
const Optional = kind<zod.ZodOptional>('ZodOptional', core.$ZodOptional)
const Default = kind<zod.ZodDefault>('ZodDefault', core.$ZodDefault)
const Pipe = kind<zod.ZodPipe>('ZodPipe', core.$ZodPipe)
const Transform = kind<zod.ZodTransform>('ZodTransform', core.$ZodTransform)

export const ZodObject = kind<zod.ZodObject>('ZodObject', core.$ZodObject)
Object.defineProperty(ZodObject.prototype, 'shape', {
  get(this: zod.ZodObject) {
    return this._zod.def.shape
  },
})

/** A change that may find fault: its second argument takes issues, as zod's does. */
function transformer(change: (value: unknown, context: object) => unknown): zod.ZodTransform {
  return new Transform({
    type: 'transform',
    transform(value, payload) {
      const addIssue = (issue: object) => payload.issues.push({ input: value, ...issue } as Any)
      return change(value, { addIssue })
    },
  })
}

// Narrower than zod's: what is not named here is not taken.

export const string = (): zod.ZodString => new Text({ type: 'string' })
export const number = (): zod.ZodNumber => new Figure({ type: 'number', checks: [] })
export const boolean = (): zod.ZodBoolean => new Flag({ type: 'boolean' })
export const unknown = (): zod.ZodUnknown => new Unknown({ type: 'unknown' })

export const literal = <const T extends core.util.Literal>(
  value: T | readonly T[],
): zod.ZodLiteral<T> => new Literal({ type: 'literal', values: [value].flat() as Any }) as Any

const choice = <const T extends readonly string[]>(
  values: T,
): zod.ZodEnum<core.util.ToEnum<T[number]>> =>
  new Enum({
    type: 'enum',
    entries: Object.fromEntries(values.map((value) => [value, value])),
  }) as Any

export { choice as enum }

export const array = <T extends core.SomeType>(element: T): zod.ZodArray<T> =>
  new List({ type: 'array', element: element as Any }) as Any

export const union = <const T extends readonly core.SomeType[]>(options: T): zod.ZodUnion<T> =>
  new Union({ type: 'union', options: options as Any }) as Any

export const record = <K extends core.$ZodRecordKey, V extends core.SomeType>(
  keyType: K,
  valueType: V,
): zod.ZodRecord<K, V> => new Table({ type: 'record', keyType, valueType: valueType as Any }) as Any

/** An object of these fields and no others. */
export const strictObject = <T extends core.$ZodLooseShape>(
  shape: T,
): zod.ZodObject<core.util.Writeable<T>, core.$strict> =>
  new ZodObject({
    type: 'object',
    shape: shape as Any,
    catchall: new Never({ type: 'never' }) as Any,
  }) as Any
