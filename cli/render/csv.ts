import { stringify } from 'csv-stringify/sync'
import type { CalcError } from '../../shared/errors.ts'
import type { Answer } from '../../shared/operation.ts'
import { pathText } from './error.ts'

export type Outcome =
  | { readonly row: number; readonly answer: Answer; readonly error?: never }
  | { readonly row: number; readonly error: CalcError; readonly answer?: never }

/**
 * Outcomes as CSV: row, then every figure of the results under its dotted name, then warnings and errors.
 *
 * The head is the union of all rows' figures, so it is known only when all are answered.
 */
export function outcomesCsv(outcomes: readonly Outcome[]): string {
  const flat = outcomes.map(({ answer }) => (answer ? flatten(answer.result) : new Map()))
  const names = [...new Set(flat.flatMap((figures) => [...figures.keys()]))]
  const records = outcomes.map(({ row, answer, error }, index) => [
    row,
    ...names.map((name) => flat[index]?.get(name) ?? ''),
    answer?.warnings.map(({ message }) => message).join(' ') ?? '',
    error?.code ?? '',
    error ? `${error.message} ${error.hint}`.trim() : '',
    error ? pathText(error.path) : '',
  ])
  const head = ['row', ...names, 'warnings', 'error', 'errorMessage', 'errorField']
  return stringify([head, ...records], { cast: { boolean: (value) => (value ? 'true' : 'false') } })
}

type Cell = string | number | boolean

function flatten(tree: unknown, name = ''): Map<string, Cell> {
  const below = (key: string) => (name === '' ? key : `${name}.${key}`)
  if (typeof tree === 'string' || typeof tree === 'number' || typeof tree === 'boolean') {
    return new Map([[name, tree]])
  }
  if (typeof tree !== 'object' || tree === null) return new Map()
  return new Map(Object.entries(tree).flatMap(([key, value]) => [...flatten(value, below(key))]))
}
