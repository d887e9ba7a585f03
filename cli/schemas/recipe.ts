import type * as z from 'zod'
import { zod } from './zod.ts'

export type Schema = z.ZodType
export type Shape = Readonly<Record<string, Schema>>

/**
 * How a schema is made: a function of zod, or a method of another schema, and its arguments.
 *
 * What stands for the schema in the program is a proxy: whatever is asked of it beyond another schema
 * makes the schema itself.
 */
export class Recipe {
  readonly name: string
  readonly args: readonly unknown[]
  /** The schema whose method it is. */
  readonly before: Recipe | undefined
  made: Schema | undefined
  /** Whether an input was read by it: the first is read without zod where it can be. */
  hasRead = false
  constructor(name: string, args: readonly unknown[], before?: Recipe) {
    this.name = name
    this.args = args
    this.before = before
  }
  get schema(): Schema {
    this.made ??= this.make()
    return this.made
  }
  private make(): Schema {
    const of = (this.before?.schema ?? zod()) as unknown as Readonly<Record<string, Method>>
    return (of[this.name] as Method).apply(of, this.args.map(schemasIn))
  }
}

type Method = (...args: unknown[]) => Schema

export const OF_PROXY = Symbol('recipe')

export const recipeOf = (value: unknown): Recipe | undefined =>
  typeof value === 'object' && value !== null
    ? (value as { readonly [OF_PROXY]?: Recipe })[OF_PROXY]
    : undefined

/** Schemas in place of their recipes: the value itself, in a list, or under the names of an object. */
export function schemasIn(value: unknown): unknown {
  const recipe = recipeOf(value)
  if (recipe) return recipe.schema
  if (Array.isArray(value)) return value.map(schemasIn)
  if (typeof value !== 'object' || value === null) return value
  if (Object.getPrototypeOf(value) !== Object.prototype) return value
  const entries = Object.entries(value)
  return entries.some(([, each]) => recipeOf(each))
    ? Object.fromEntries(entries.map(([name, each]) => [name, schemasIn(each)]))
    : value
}
