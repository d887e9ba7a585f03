import { Readable } from 'node:stream'
import { parse } from 'csv-parse'
import { CalcError } from '../../shared/errors.ts'
import { type Field, putText } from '../../shared/input/index.ts'
import type { Row } from './rows.ts'

/**
 * Rows of a CSV text whose head names the fields; an empty cell is a field that is not given.
 *
 * `pressure (psig)` in the head gives the column's unit, so that its cells may be bare numbers.
 */
export async function* csvRows(
  chunks: AsyncIterable<string>,
  fields: readonly Field[],
): AsyncIterable<Row> {
  const parser = Readable.from(chunks).pipe(
    parse({
      bom: true,
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
      // 3/8" is a size, not a quotation.
      relax_quotes: true,
    }),
  )
  let head: readonly Heading[] | undefined
  let row = 0
  try {
    for await (const cells of parser as AsyncIterable<readonly string[]>) {
      if (head) {
        row += 1
        yield rowOf(row, head, cells, fields)
      } else {
        head = cells.map(headingOf)
      }
    }
  } catch (error) {
    if (!(error instanceof Error)) throw error
    yield {
      row: row + 1,
      error: new CalcError('bad-input', `The CSV text cannot be read further: ${error.message}.`, {
        hint: 'Look for a quotation mark that is opened and not closed.',
      }),
    }
  }
}

interface Heading {
  readonly name: string
  readonly unit: string | undefined
}

function headingOf(cell: string): Heading {
  const split = /^(.+?)\s*[([](.+)[)\]]$/u.exec(cell)
  return { name: split?.[1] ?? cell, unit: split?.[2] }
}

function rowOf(
  row: number,
  head: readonly Heading[],
  cells: readonly string[],
  fields: readonly Field[],
): Row {
  const value: Record<string, unknown> = {}
  try {
    if (cells.length > head.length) {
      throw new CalcError(
        'bad-input',
        `The row has ${cells.length} cells, and the head names ${head.length}.`,
        { hint: 'Put a cell that has a comma in it in double quotes.' },
      )
    }
    cells.forEach((cell, index) => {
      const heading = head[index]
      if (cell === '' || !heading) return
      putText(value, fields, heading.name, withUnit(cell, heading.unit))
    })
    return { row, value }
  } catch (error) {
    if (error instanceof CalcError) return { row, error }
    throw error
  }
}

/** The unit of the head goes to a cell that has none of its own. */
const withUnit = (cell: string, unit: string | undefined) =>
  unit !== undefined && /^[\d.,+\-−/ ±]+$/u.test(cell) ? `${cell} ${unit}` : cell
