import { CalcError } from '../../shared/errors.ts'
import { parseJson } from '../../shared/input/index.ts'
import { doorProblem } from '../problem.ts'
import { MOST_WORK, weightOf, workOf } from './work.ts'

/** One input of a batch, counted from one, and what it counts; or why it could not be read. */
export type Item =
  | { readonly row: number; readonly work: number; readonly input: unknown; readonly error?: never }
  | { readonly row: number; readonly work: number; readonly error: CalcError }

/** A JSON object a line; a line that cannot be read spoils no other. */
export const itemsOfLines = (operation: string, text: string): readonly Item[] =>
  text
    .split(/\r?\n/u)
    .filter((line) => line.trim() !== '')
    .map((line, index) => lineItem(operation, index + 1, line))

function lineItem(operation: string, row: number, line: string): Item {
  try {
    const input = parseJson(line)
    return { row, input, work: workOf(operation, input) }
  } catch (error) {
    if (error instanceof CalcError) return { row, work: 1, error }
    throw error
  }
}

export const itemsOfList = (operation: string, list: readonly unknown[]): readonly Item[] =>
  list.map((input, index) => ({ row: index + 1, input, work: workOf(operation, input) }))

/** Why a batch is not begun: it is empty, or it asks for more than one request may. */
export function batchRefusal(operation: string, items: readonly Item[]): Response | undefined {
  if (items.length === 0) {
    throw new CalcError('missing-input', 'There is no input in the batch.', {
      hint: 'Send a JSON list of inputs, or a JSON object a line.',
    })
  }
  const work = items.reduce((sum, item) => sum + item.work, 0)
  if (work <= MOST_WORK) return undefined
  return doorProblem(
    'too-much-work',
    `This batch counts ${work}, and one request may count ${MOST_WORK}; an input of ${operation} counts ${weightOf(operation)}, a long one several times that.`,
    { hint: 'Send it in parts.' },
  )
}
