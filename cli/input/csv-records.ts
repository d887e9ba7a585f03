import { CalcError } from '../../shared/errors.ts'
import type { Line } from './lines.ts'
import { tooLong } from './too-long.ts'

/** A quoted cell may hold line ends; one that holds more than this was never closed. */
const MOST_LINES = 50

/** The cells of a record, or why it has none. */
export type Csv = readonly string[] | CalcError

/**
 * Records of a CSV text (RFC 4180), those of a block of lines together.
 *
 * A line without a quotation mark is parted at its commas; the library reads the others. A mark that is
 * never closed spoils its own line and no other: what follows is read again without it.
 */
export async function* csvRecords(
  lines: AsyncIterable<readonly Line[]>,
): AsyncIterable<readonly Csv[]> {
  let open: string[] = []
  for await (const block of lines) {
    const records: Csv[] = []
    const waiting = [...block].reverse()
    for (let line = waiting.pop(); line !== undefined; line = waiting.pop()) {
      if (typeof line !== 'string') {
        if (open.length === 0) records.push(tooLong())
        else {
          waiting.push(line)
          records.push(unclosed(open, waiting))
          open = []
        }
      } else if (open.length === 0 && !line.includes('"')) {
        const cells = line.split(',').map((cell) => cell.trim())
        if (cells.length > 1 || cells[0] !== '') records.push(cells)
      } else {
        open.push(line)
        const cells = await quotedCells(open.join('\n'))
        if (cells === 'open' && open.length < MOST_LINES) continue
        records.push(typeof cells === 'string' ? unclosed(open, waiting) : cells)
        open = []
      }
    }
    if (records.length > 0) yield records
  }
  yield* rest(open)
}

/** At the end of the input nothing can close a mark any more. */
async function* rest(lines: readonly string[]): AsyncIterable<readonly Csv[]> {
  if (lines.length === 0) return
  const waiting: Line[] = []
  yield [unclosed([...lines], waiting)]
  yield* csvRecords(blocksOf([waiting.reverse()]))
}

async function* blocksOf(blocks: readonly (readonly Line[])[]): AsyncIterable<readonly Line[]> {
  yield* blocks
}

/** Gives up the first of the open lines and puts the others back, to be read anew. */
function unclosed(open: readonly string[], waiting: Line[]): CalcError {
  waiting.push(...open.slice(1).reverse())
  return new CalcError(
    'bad-input',
    'A quotation mark in this line is not closed as it should be.',
    {
      hint: 'A cell in double quotes ends with one; a mark inside it is written twice.',
    },
  )
}

/** The cells of one record; `open` where a quotation goes on, `broken` where what follows it cannot be. */
async function quotedCells(text: string): Promise<readonly string[] | 'open' | 'broken'> {
  const { parse } = await import('csv-parse/sync')
  try {
    const [cells] = parse(text, {
      trim: true,
      relax_column_count: true,
      // 3/8" is a size, not a quotation.
      relax_quotes: true,
    }) as readonly (readonly string[])[]
    return cells ?? []
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error
    return error.code === 'CSV_QUOTE_NOT_CLOSED' ? 'open' : 'broken'
  }
}
