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
      return new Default({ type: 'default', innerType: this, defaultValue: value })
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

type Builders = Pick<
  typeof zod,
  | 'string'
  | 'number'
  | 'boolean'
  | 'unknown'
  | 'literal'
  | 'enum'
  | 'array'
  | 'strictObject'
  | 'union'
  | 'record'
>

export const string = (() => new Text({ type: 'string' })) as Builders['string']
export const number = (() => new Figure({ type: 'number', checks: [] })) as Builders['number']
export const boolean = (() => new Flag({ type: 'boolean' })) as Builders['boolean']
export const unknown: Builders['unknown'] = () => new Unknown({ type: 'unknown' })
export const literal = ((value: core.util.Literal) =>
  new Literal({ type: 'literal', values: [value] })) as Builders['literal']
export const array = ((element: core.SomeType) =>
  new List({ type: 'array', element: element as Any })) as Builders['array']
export const union = ((options: Any) => new Union({ type: 'union', options })) as Builders['union']
export const record = ((keyType: Any, valueType: Any) =>
  new Table({ type: 'record', keyType, valueType })) as Builders['record']
export const strictObject = ((shape: Any) =>
  new ZodObject({
    type: 'object',
    shape,
    catchall: new Never({ type: 'never' }),
  })) as unknown as Builders['strictObject']

const choice = ((values: readonly string[]) =>
  new Enum({
    type: 'enum',
    entries: Object.fromEntries(values.map((value) => [value, value])),
  })) as unknown as Builders['enum']

export { choice as enum }
