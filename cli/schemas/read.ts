import { type Recipe, recipeOf, type Shape } from './recipe.ts'

/** What an input was read as. */
export interface Read {
  readonly data: unknown
}

/**
 * Reads an input as zod would read it; undefined where it does not fit, or where the schema is of a kind
 * that is not known here: then zod is asked, which also says why.
 */
export function read(recipe: Recipe, input: unknown): Read | undefined {
  return recipe.before ? afterwards(recipe, recipe.before, input) : base(recipe, input)
}

function base({ name, args }: Recipe, input: unknown): Read | undefined {
  const [first] = args
  if (args.length > 1) return undefined
  const fits = { data: input }
  switch (name) {
    case 'unknown':
      return fits
    case 'string':
    case 'boolean':
      return typeof input === name && args.length === 0 ? fits : undefined
    case 'number':
      return Number.isFinite(input) && args.length === 0 ? fits : undefined
    case 'int':
      return Number.isSafeInteger(input) && args.length === 0 ? fits : undefined
    case 'enum':
      return Array.isArray(first) && first.includes(input) ? fits : undefined
    case 'array':
      return Array.isArray(input) ? readList(first, input) : undefined
    case 'strictObject':
      return readObject(first as Shape, input)
    default:
      return undefined
  }
}

function afterwards({ name, args }: Recipe, before: Recipe, input: unknown): Read | undefined {
  switch (name) {
    case 'describe':
    case 'meta':
      return read(before, input)
    case 'optional':
      if (input !== undefined) return read(before, input)
      return hasPreset(before) ? undefined : { data: undefined }
    case 'default':
      if (input !== undefined) return read(before, input)
      return isPlain(args[0]) ? { data: args[0] } : undefined
    case 'transform':
      return transformed(args[0] as Transform, read(before, input))
    default:
      return checked(name, args, read(before, input))
  }
}

type Transform = (value: unknown, context: { addIssue(): void }) => unknown

function transformed(transform: Transform, before: Read | undefined): Read | undefined {
  if (!before) return undefined
  let isRefused = false
  const data = transform(before.data, {
    addIssue() {
      isRefused = true
    },
  })
  return isRefused || data instanceof Promise ? undefined : { data }
}

function checked(name: string, args: readonly unknown[], before: Read | undefined) {
  if (!before) return undefined
  const { data } = before
  if (name === 'trim') return typeof data === 'string' ? { data: data.trim() } : undefined
  return holds(name, args[0], data) ? before : undefined
}

function holds(name: string, limit: unknown, data: unknown): boolean {
  if (typeof data === 'string' && name === 'regex') {
    return limit instanceof RegExp && !limit.global && !limit.sticky && limit.test(data)
  }
  const size = typeof data === 'string' || Array.isArray(data) ? data.length : data
  if (typeof size !== 'number') return false
  if (name === 'min') return typeof limit === 'number' && size >= limit
  if (name === 'max') return typeof limit === 'number' && size <= limit
  if (size !== data) return false
  if (name === 'int') return Number.isSafeInteger(size)
  return name === 'nonnegative' ? size >= 0 : name === 'positive' && size > 0
}

/** Whether a value may come of nothing. */
const hasPreset = ({ name, before }: Recipe): boolean =>
  name === 'default' || name === 'prefault' || (before !== undefined && hasPreset(before))

/** What it does where a field is not given: its last method that is more than words. */
const openness = ({ name, before }: Recipe): string =>
  before && (name === 'describe' || name === 'meta') ? openness(before) : name

const isPlain = (value: unknown) =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'

function readList(item: unknown, list: readonly unknown[]): Read | undefined {
  const recipe = recipeOf(item)
  if (!recipe) return undefined
  const data: unknown[] = []
  for (const each of list) {
    const found = read(recipe, each)
    if (!found) return undefined
    data.push(found.data)
  }
  return { data }
}

function readObject(shape: Shape, input: unknown): Read | undefined {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) return undefined
  const given = input as Readonly<Record<string, unknown>>
  if (!Object.keys(given).every((name) => Object.hasOwn(shape, name))) return undefined
  const data: Record<string, unknown> = {}
  for (const [name, field] of Object.entries(shape)) {
    const recipe = recipeOf(field)
    if (!recipe) return undefined
    const isGiven = name in given
    const left = openness(recipe)
    if (!isGiven && left === 'optional' && !hasPreset(recipe)) continue
    if (!isGiven && left !== 'default') return undefined
    const found = read(recipe, given[name])
    if (!found) return undefined
    data[name] = found.data
  }
  return { data }
}
