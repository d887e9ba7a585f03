import { CalcError } from '../../shared/errors.ts'
import type { Answer } from '../../shared/operation.ts'
import { EXIT, type ExitStatus, exitStatusOf } from '../exit.ts'
import type { Row } from '../input/rows.ts'

/** Why a row has no answer: the calculation's own refusal, or a fault of the program. */
export interface RowError {
  readonly code: CalcError['code'] | 'fault'
  readonly message: string
  readonly path: CalcError['path']
  readonly hint: string
}

export type Outcome =
  | { readonly row: number; readonly answer: Answer; readonly error?: never }
  | { readonly row: number; readonly error: RowError; readonly answer?: never }

/** What came of a row. A fault of the program spoils its own row only: the others are worth as much. */
export function outcomeOf(row: Row, answer: (value: unknown) => Answer): Outcome {
  if (row.error) return { row: row.row, error: row.error.toJSON() }
  try {
    return { row: row.row, answer: answer(row.value) }
  } catch (error) {
    return { row: row.row, error: error instanceof CalcError ? error.toJSON() : fault(error) }
  }
}

const fault = (error: unknown): RowError => ({
  code: 'fault',
  message: `The program failed at this row: ${error instanceof Error ? error.message : String(error)}`,
  path: [],
  hint: 'The input may well be right; please report it.',
})

export const statusOf = ({ error }: Outcome): ExitStatus => {
  if (!error) return EXIT.answered
  return error.code === 'fault' ? EXIT.failed : exitStatusOf[error.code]
}
