import { CalcError } from '../../shared/errors.ts'
import { type Field, parseJson } from '../../shared/input/index.ts'
import type { Streams } from '../streams.ts'
import { decoded, joined, lines, peeked } from './chunks.ts'

/** One row of input, counted from one; `error` where it could not even be read. */
export type Row =
  | { readonly row: number; readonly value: unknown; readonly error?: never }
  | { readonly row: number; readonly error: CalcError }

/** One input, or many that are answered one by one. */
export type Input =
  | { readonly type: 'one'; readonly value: unknown }
  | { readonly type: 'rows'; readonly rows: AsyncIterable<Row> }

/**
 * Reads `-` (standard input) or a file: a JSON object, a JSON list, a JSON object a line, or CSV.
 *
 * @throws {CalcError} `bad-input` for a file that cannot be read or a JSON text that is none.
 */
export async function readInput(
  name: string,
  fields: readonly Field[],
  streams: Streams,
): Promise<Input> {
  const text = name === '-' ? decoded(streams.stdin) : decoded(fileChunks(name, streams))
  const { first, all } = await peeked(text)
  if (first === '') {
    throw new CalcError('missing-input', `${name === '-' ? 'Standard input' : name} is empty.`, {
      hint: 'Give a JSON object, a JSON object a line, or CSV rows under a line of field names.',
    })
  }
  if (/\.csv$/iu.test(name) || !/^[[{]/u.test(withoutMark(first))) {
    const { csvRows } = await import('./csv-rows.ts')
    return { type: 'rows', rows: csvRows(all, fields) }
  }
  const linewise = /\.(?:ndjson|jsonl)$/iu.test(name) || hasWholeFirstLine(withoutMark(first))
  if (linewise) return { type: 'rows', rows: jsonLines(all) }
  const value = parseJson(withoutMark(await joined(all)))
  return Array.isArray(value) ? { type: 'rows', rows: listRows(value) } : { type: 'one', value }
}

async function* fileChunks(name: string, streams: Streams): AsyncIterable<string> {
  yield await readTextFile(name, streams)
}

/** @throws {CalcError} `bad-input` where the file is not there or cannot be read. */
export async function readTextFile(name: string, streams: Streams): Promise<string> {
  try {
    return await streams.readFile(name)
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? ` (${String(error.code)})` : ''
    throw new CalcError('bad-input', `The file ${name} cannot be read${reason}.`, {
      hint: 'Check the path; "-" reads standard input.',
    })
  }
}

const withoutMark = (text: string) => text.replace(/^\uFEFF/u, '').trimStart()

/** A first line that is a JSON object by itself, with more behind it: one object a line. */
function hasWholeFirstLine(text: string): boolean {
  const end = text.indexOf('\n')
  if (end < 0 || !text.startsWith('{') || text.slice(end).trim() === '') return false
  try {
    JSON.parse(text.slice(0, end))
    return true
  } catch {
    return false
  }
}

async function* jsonLines(chunks: AsyncIterable<string>): AsyncIterable<Row> {
  let row = 0
  for await (const line of lines(chunks)) {
    const text = withoutMark(line)
    if (text.trim() === '') continue
    row += 1
    try {
      yield { row, value: parseJson(text) }
    } catch (error) {
      if (!(error instanceof CalcError)) throw error
      yield { row, error }
    }
  }
}

async function* listRows(list: readonly unknown[]): AsyncIterable<Row> {
  for (const [index, value] of list.entries()) yield { row: index + 1, value }
}
