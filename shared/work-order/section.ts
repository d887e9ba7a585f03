import type * as z from 'zod'
import { CalcError } from '../errors.ts'
import type { Computation, Computed, DefinedOperation } from '../operation.ts'
import { HEAD_PATHS } from './inherit.ts'
import { asWritten, label } from './raw.ts'

type Path = readonly (string | number)[]

/** A value that a step takes from elsewhere on the order, and where it stands there. */
export interface Inherited {
  readonly raw: unknown
  readonly path: Path
  /** For a list: which entry of the order each of its entries is. */
  readonly indexes?: readonly number[]
}

export interface Problem {
  readonly code: string
  readonly message: string
  readonly hint: string
  readonly path: Path
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
    }

/**
 * Runs one step of the order on its own section and what it inherits.
 *
 * A refusal does not leave the step: it becomes a problem whose path leads below the section, or to
 * the place on the order that the value was inherited from.
 */
export function runSection<F extends Record<string, z.ZodType>, R extends z.ZodType>(
  operation: DefinedOperation<F, R>,
  key: string,
  section: Readonly<Record<string, unknown>> | undefined,
  inherited: Readonly<Record<string, Inherited | undefined>>,
): Outcome<Computed<z.output<R>>> {
  const taken = Object.entries(inherited).flatMap(([field, value]) =>
    value && field in operation.fields && !(section && field in section)
      ? [[field, value] as const]
      : [],
  )
  const read = readLines(section)
  const where = (path: Path) => placed(path, key, section, new Map(taken))
  try {
    const raw = {
      ...Object.fromEntries(taken.map(([field, value]) => [field, value.raw])),
      ...section,
    }
    const computation = operation.compute(operation.parse(raw))
    return {
      state: 'done',
      read,
      computation,
      where: (field) => where(field.split('.')).join('.'),
    }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return {
      state: error.code === 'missing-input' ? 'missing' : 'failed',
      read,
      problem: {
        code: error.code,
        message: error.message,
        hint: error.hint,
        path: where(error.path),
      },
    }
  }
}

function placed(
  path: Path,
  key: string,
  section: Readonly<Record<string, unknown>> | undefined,
  taken: ReadonlyMap<string, Inherited>,
): Path {
  const [field, ...rest] = path
  if (typeof field !== 'string') return [key, ...path]
  const from = taken.get(field)
  if (!from) {
    const head = section && field in section ? undefined : HEAD_PATHS[field]
    return head ? [...head, ...rest] : [key, ...path]
  }
  const [index, ...deeper] = rest
  const original = typeof index === 'number' ? from.indexes?.[index] : undefined
  return [...from.path, ...(original === undefined ? rest : [original, ...deeper])]
}

/** What a section says, one line a field; lists by their length. */
const readLines = (section: Readonly<Record<string, unknown>> | undefined): ReadLine[] =>
  Object.entries(section ?? {}).flatMap(([field, raw]) => {
    const value = asWritten(raw)
    return value === undefined ? [] : [{ label: label(field), value }]
  })
