import { fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Answer, Assumption, Operation } from '../../shared/operation.ts'
import type { Settings } from './schema.ts'

/** What the settings add to an input, and how the answer says so. */
export interface Applied {
  readonly fields: Readonly<Record<string, unknown>>
  readonly assumptions: readonly Assumption[]
}

/**
 * The settings that an operation takes and the input leaves open. A barometer or an altitude that is
 * given sets the place: the other of the two is then not filled in from the settings.
 */
export function applied(
  operation: Operation,
  { fields }: Settings,
  given: Readonly<Record<string, unknown>>,
): Applied {
  const names = new Set(fieldsOf(operation).map(({ name }) => name))
  const placed = given.altitude !== undefined || given.barometer !== undefined
  const taken = Object.entries(fields).filter(
    ([name]) =>
      names.has(name) &&
      given[name] === undefined &&
      !(placed && (name === 'altitude' || name === 'barometer')),
  )
  return {
    fields: Object.fromEntries(taken),
    assumptions: taken.map(([field, value]) => ({
      field,
      taken: String(value),
      because: 'from settings',
      short: `${kebab(field).replaceAll('-', ' ')} ${String(value)} (from settings)`,
    })),
  }
}

/** The answer with what came from the settings among what was assumed. */
export const withApplied = (answer: Answer, { assumptions }: Applied): Answer =>
  assumptions.length === 0
    ? answer
    : { ...answer, assumptions: [...answer.assumptions, ...assumptions] }
