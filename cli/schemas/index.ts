import type * as z from 'zod'
import { read } from './read.ts'
import { OF_PROXY, Recipe, recipeOf, type Schema, type Shape, schemasIn } from './recipe.ts'
import { zod } from './zod.ts'

/**
 * What stands for zod in the bundled command line: a schema is noted down where it is declared and made
 * where more is asked of it than to read one good input.
 *
 * Loading zod and making the schemas of all fields takes longer than the calculation that needs a dozen
 * of them. Refusals, lists of rows and the server come from zod itself.
 */

/** Methods that give another schema by their arguments alone. */
const METHODS: ReadonlySet<unknown> = new Set(
  'array check default describe extend int max meta min nonnegative nullable optional pipe positive prefault readonly refine regex superRefine transform trim'.split(
    ' ',
  ),
)

const handler: ProxyHandler<Recipe> = {
  get(recipe, key) {
    if (key === OF_PROXY) return recipe
    if (recipe.made === undefined) {
      if (METHODS.has(key)) return (...args: unknown[]) => methodOf(recipe, key as string, args)
      if (key === 'shape' && recipe.name === 'strictObject') return recipe.args[0]
      if (key === 'safeParse' && !recipe.hasRead)
        return (input: unknown) => firstRead(recipe, input)
    }
    const { schema } = recipe
    return Reflect.get(schema, key, schema)
  },
  has: (recipe, key) => Reflect.has(recipe.schema, key),
  getPrototypeOf: (recipe) => Reflect.getPrototypeOf(recipe.schema),
  set: (recipe, key, value) => Reflect.set(recipe.schema, key, value),
}

const noted = (name: string, args: readonly unknown[], before?: Recipe) =>
  new Proxy(new Recipe(name, args, before), handler)

const methodOf = (recipe: Recipe, name: string, args: readonly unknown[]) =>
  name === 'meta' && args.length === 0
    ? (recipe.schema as z.ZodType).meta()
    : noted(name, args, recipe)

/** The second input is left to zod, which reads many sooner. */
function firstRead(recipe: Recipe, input: unknown) {
  recipe.hasRead = true
  const found = read(recipe, input)
  return found ? { success: true, ...found } : recipe.schema.safeParse(input)
}

/** A function of zod, put off. */
const off = <F>(name: string): F => ((...args: unknown[]) => noted(name, args)) as F

export const array: typeof z.array = off('array')
export const boolean: typeof z.boolean = off('boolean')
const choice: typeof z.enum = off('enum')
export const int: typeof z.int = off('int')
export const literal: typeof z.literal = off('literal')
export const map: typeof z.map = off('map')
export const number: typeof z.number = off('number')
export const record: typeof z.record = off('record')
export const strictObject: typeof z.strictObject = off('strictObject')
export const string: typeof z.string = off('string')
export const union: typeof z.union = off('union')
export const unknown: typeof z.unknown = off('unknown')
export { choice as enum }

/** What a transformation returns that has refused its value. */
export const NEVER = Object.freeze({ status: 'aborted' }) as never

/** To be asked for: `schema instanceof ZodObject`. */
export const ZodObject = {
  [Symbol.hasInstance](value: unknown): boolean {
    const recipe = recipeOf(value)
    if (recipe && recipe.made === undefined && recipe.name === 'strictObject') return true
    return schemasIn(value) instanceof zod().ZodObject
  },
}

/** Kept by schema: a recipe is looked up as what it makes. */
export const globalRegistry = {
  get: (schema: Schema) => zod().globalRegistry.get(schemasIn(schema) as Schema),
}

export const toJSONSchema = (schema: Schema, options?: object) =>
  zod().toJSONSchema(schemasIn(schema) as Schema, options)

export type { Shape }
