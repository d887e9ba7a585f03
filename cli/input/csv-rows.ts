import { CalcError } from '../../shared/errors.ts'
import { type Field, fieldNamed, putText, unknownName } from '../../shared/input/index.ts'
import { csvRecords } from './csv-records.ts'
import type { Line } from './lines.ts'
import type { Row } from './rows.ts'

/**
 * Rows of a CSV text whose head names the fields; an empty cell is a field that is not given.
 *
 * `pressure (psig)` in the head gives the column's unit, so that its cells may be bare numbers.
 */
export async function* csvRows(
  lines: AsyncIterable<readonly Line[]>,
  fields: readonly Field[],
): AsyncIterable<readonly Row[]> {
  let head: readonly Heading[] | undefined
  let row = 0
  for await (const records of csvRecords(lines)) {
    const rows: Row[] = []
    for (const record of records) {
      if (head === undefined) {
        if (record instanceof CalcError) throw record
        head = headOf(record, fields)
      } else {
        row += 1
        rows.push(
          record instanceof CalcError ? { row, error: record } : rowOf(row, head, record, fields),
        )
      }
    }
    yield rows
  }
}
interface Heading {
  readonly name: string
  readonly unit: string | undefined
}

/** @throws {CalcError} `bad-input` for a name that is no field or that stands twice: no row could be right. */
function headOf(cells: readonly string[], fields: readonly Field[]): readonly Heading[] {
  const head = cells.map(headingOf)
  const seen = new Set<string>()
  for (const { name } of head) {
    // A comma at the end of every line leaves a column without a name.
    if (name === '') continue
    const [outer = '', ...inner] = name.split('.')
    const field = fieldNamed(fields, outer)
    if (!field) throw unnamed(name, cells, fields)
    const key = [field.name, ...inner].join('.')
    if (seen.has(key)) {
      throw new CalcError('bad-input', `Two columns are called "${name}".`, {
        path: [field.name],
        hint: 'Keep one of them.',
      })
    }
    seen.add(key)
  }
  return head
}

function unnamed(name: string, cells: readonly string[], fields: readonly Field[]): CalcError {
  const other = /[;\t|]/u.exec(name)?.[0]
  if (cells.length > 1 || other === undefined) return unknownName(name, fields)
  return new CalcError(
    'bad-input',
    'The first line names no field, and nothing in it is parted by a comma.',
    {
      hint: `Part the cells by commas instead of ${other === '\t' ? 'tabs' : `"${other}"`}.`,
    },
  )
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
