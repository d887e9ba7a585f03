import { type Cell, csvLine } from '../../shared/csv.ts'
import type { Operation } from '../../shared/operation.ts'
import { csvColumns } from './csv-columns.ts'
import { pathText } from './error.ts'
import type { Outcome } from './outcome.ts'

const END = '\n'

export interface CsvWriter {
  readonly head: string
  line(outcome: Outcome): string
}

/**
 * Outcomes as CSV: row, then every figure that a result of this operation can have under its dotted
 * name, then warnings and errors.
 *
 * The columns are those of the operation's schema: the same for every run, and known before any row is.
 *
 * @param both - Whether figures come in both unit systems.
 */
export function csvWriter(operation: Operation, both: boolean): CsvWriter {
  const { names, fill } = csvColumns(operation, both)
  return {
    head: csvLine(['row', ...names, 'warnings', 'error', 'errorMessage', 'errorField'], END),
    line({ row, answer, error }) {
      const cells: Cell[] = new Array(names.length + 5).fill('')
      cells[0] = row
      if (answer) fill(answer.result, cells, 1)
      cells[names.length + 1] = answer?.warnings.map(({ message }) => message).join(' ') ?? ''
      cells[names.length + 2] = error?.code ?? ''
      cells[names.length + 3] = error ? `${error.message} ${error.hint}`.trim() : ''
      cells[names.length + 4] = error ? pathText(error.path) : ''
      return csvLine(cells, END)
    },
  }
}
