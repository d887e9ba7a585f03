import * as z from 'zod'

/**
 * zod for the bundled command line: a schema is noted down where it is declared and made where it is
 * first used.
 *
 * Making the schemas of all fields takes longer than the calculation that needs a dozen of them. What is
 * not named here is zod's own and works with both.
 */
export * from 'zod'

/** How a schema is made, and the schema once it is. */
class Recipe {
  readonly make: () => object
  made: object | undefined
  constructor(make: () => object) {
    this.make = make
  }
}

const OF_PROXY = Symbol('recipe')

/** Methods that give another schema by their arguments alone. */
const MAKERS: ReadonlySet<unknown> = new Set(
  'array check default describe extend int max meta min nonnegative nullable optional pipe positive prefault readonly refine regex superRefine transform trim'.split(
    ' ',
  ),
)

const madeOf = (recipe: Recipe): object => {
  recipe.made ??= recipe.make()
  return recipe.made
}

const recipeOf = (value: unknown): Recipe | undefined =>
  typeof value === 'object' && value !== null
    ? (value as { readonly [OF_PROXY]?: Recipe })[OF_PROXY]
    : undefined

/** Schemas in place of their recipes: the value itself, in a list, or under the names of an object. */
function schemasIn(value: unknown): unknown {
  const recipe = recipeOf(value)
  if (recipe) return madeOf(recipe)
  if (Array.isArray(value)) return value.map(schemasIn)
  if (typeof value !== 'object' || value === null) return value
  if (Object.getPrototypeOf(value) !== Object.prototype) return value
  const entries = Object.entries(value)
  return entries.some(([, each]) => recipeOf(each))
    ? Object.fromEntries(entries.map(([name, each]) => [name, schemasIn(each)]))
    : value
}

type Method = (...args: unknown[]) => object

const handler: ProxyHandler<Recipe> = {
  get(recipe, key) {
    if (key === OF_PROXY) return recipe
    if (recipe.made === undefined && MAKERS.has(key)) {
      return (...args: unknown[]) =>
        args.length === 0 && key === 'meta'
          ? (madeOf(recipe) as z.ZodType).meta()
          : noted(() => {
              const schema = madeOf(recipe) as Record<string, Method>
              return (schema[key as string] as Method)(...args.map(schemasIn))
            })
    }
    const schema = madeOf(recipe)
    return Reflect.get(schema, key, schema)
  },
  has: (recipe, key) => Reflect.has(madeOf(recipe), key),
  getPrototypeOf: (recipe) => Reflect.getPrototypeOf(madeOf(recipe)),
  set: (recipe, key, value) => Reflect.set(madeOf(recipe), key, value),
}

const noted = (make: () => object) => new Proxy(new Recipe(make), handler)

/** The function of zod, put off until what it gives is used. */
const whenUsed = <F>(maker: F): F =>
  ((...args: unknown[]) => noted(() => (maker as Method)(...args.map(schemasIn)))) as F

export const array = whenUsed(z.array)
export const boolean = whenUsed(z.boolean)
const choice = whenUsed(z.enum)
export const literal = whenUsed(z.literal)
export const map = whenUsed(z.map)
export const number = whenUsed(z.number)
export const record = whenUsed(z.record)
export const strictObject = whenUsed(z.strictObject)
export const string = whenUsed(z.string)
export const union = whenUsed(z.union)
export const unknown = whenUsed(z.unknown)
export { choice as enum }
/** Kept by schema: a recipe is looked up as what it makes. */
export const globalRegistry = {
  get: (schema: z.ZodType) => z.globalRegistry.get(schemasIn(schema) as z.ZodType),
}
