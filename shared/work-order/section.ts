import type * as z from 'zod'
import type { CautionId } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import type { Computation, Computed, DefinedOperation } from '../operation.ts'
import { HEAD_PATHS, type Head, type Path, type Placed } from './head.ts'
import { asWritten, label } from './written.ts'

export interface Problem {
  readonly code: string
  readonly message: string
  readonly hint: string
  readonly path: Path
  /** Going on would hurt somebody or break the law. */
  readonly stop: boolean
}

/** A line of what was read or written down. */
export interface ReadLine {
  readonly label: string
  readonly value: string
}

export type Outcome<R> =
  | { readonly state: 'absent'; readonly read: readonly ReadLine[] }
  | {
      readonly state: 'done'
      readonly read: readonly ReadLine[]
      readonly computation: Computation<R>
      /** Where a field of the step stands on the order, dotted. */
      readonly where: (field: string) => string
    }
  /** `missing`: nothing is wrong, but something has to be given first. */
  | {
      readonly state: 'missing' | 'failed'
      readonly read: readonly ReadLine[]
      readonly problem: Problem
      /** What is dangerous about what was refused. */
      readonly cautions: readonly CautionId[]
    }

type Fields = Record<string, z.ZodType>
type Given<F extends Fields> = { readonly [K in keyof F]?: z.output<F[K]> | undefined }

/**
 * Runs one step of the order on its own section, on what stands on the order's head under the same
 * name, and on what other steps hand on.
 *
 * A refusal does not leave the step: it becomes a problem whose path leads below the section, or to
 * the place on the order that the value was taken from.
 */
export function runSection<F extends Fields, R extends z.ZodType>(
  operation: DefinedOperation<F, R>,
  key: string,
  section: Given<F> | undefined,
  head: Head,
  handed: Readonly<Record<string, Placed | undefined>> = {},
): Outcome<Computed<z.output<R>>> {
  const own = defined(section ?? {})
  const taken: Record<string, Placed> = {}
  for (const [name, placed] of Object.entries({ ...head, ...handed })) {
    if (placed && name in operation.fields && !(name in own)) taken[name] = placed
  }
  const read = readLines(withoutDefaults(operation, own))
  const where = (path: Path) => placedAt(path, key, own, taken)
  const input = {
    ...Object.fromEntries(Object.entries(taken).map(([name, { value }]) => [name, value])),
    ...own,
  } as z.output<z.ZodObject<F>>
  try {
    requireAll(operation, input)
    const computation = operation.compute(input)
    return {
      state: 'done',
      read,
      computation,
      where: (field) => where(field.split('.')).join('.'),
    }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const { code, message, hint, level, cautions } = error
    return {
      state: code === 'missing-input' ? 'missing' : 'failed',
      read,
      problem: { code, message, hint, path: where(error.path), stop: level === 'stop' },
      cautions,
    }
  }
}

const defined = (section: object): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(section).filter(([, value]) => value !== undefined))

const needed = new WeakMap<Fields, readonly string[]>()

/** Fields that an operation cannot do without. */
function requiredOf({ fields }: { readonly fields: Fields }): readonly string[] {
  const known = needed.get(fields)
  if (known) return known
  const names = Object.keys(fields).filter((name) => !fields[name]?.safeParse(undefined).success)
  needed.set(fields, names)
  return names
}

function requireAll(operation: { readonly fields: Fields }, input: object): void {
  const missing = requiredOf(operation).filter((name) => !(name in input))
  const [first] = missing
  if (first === undefined) return
  throw new CalcError('missing-input', `Still needed: ${missing.map(label).join(', ')}.`, {
    path: [first],
    hint: operation.fields[first]?.description ?? '',
  })
}

function placedAt(
  path: Path,
  key: string,
  own: Readonly<Record<string, unknown>>,
  taken: Readonly<Record<string, Placed>>,
): Path {
  const [field, ...rest] = path
  if (typeof field !== 'string') return [key, ...path]
  if (field in own) return [key, ...path]
  const { path: from = HEAD_PATHS[field], at } = taken[field] ?? {}
  if (!from) return [key, ...path]
  const [index, ...below] = rest
  return typeof index === 'number' ? [...from, at?.[index] ?? index, ...below] : [...from, ...rest]
}

/** What somebody wrote; what a field is without it was written by nobody. */
const withoutDefaults = (
  { fields }: { readonly fields: Fields },
  own: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    Object.entries(own).filter(([name, value]) => {
      const alone = fields[name]?.safeParse(undefined)
      return !(alone?.success && alone.data !== undefined && alone.data === value)
    }),
  )

/** What a section says, one line a field; lists by their length. */
const readLines = (section: Readonly<Record<string, unknown>>): ReadLine[] =>
  Object.entries(section).flatMap(([field, value]) => {
    const written = asWritten(value)
    return written === undefined ? [] : [{ label: label(field), value: written }]
  })
