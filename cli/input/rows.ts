import { CalcError } from '../../shared/errors.ts'
import { type Field, parseJson } from '../../shared/input/index.ts'
import { hidesLetters } from '../../shared/visible.ts'
import { isYaml } from '../order/yaml-name.ts'
import type { Streams } from '../streams.ts'
import { decoded, joined, Peeker } from './chunks.ts'
import { type Line, lineBlocks } from './lines.ts'
import { readTextFile, unreadable } from './read-file.ts'
import { tooLong } from './too-long.ts'

/** One row of input, counted from one; `error` where it could not even be read. */
export type Row =
  | { readonly row: number; readonly value: unknown; readonly error?: never }
  | { readonly row: number; readonly error: CalcError }

/** Rows that are answered one by one, those that came together together. */
export interface Rows {
  readonly type: 'rows'
  readonly blocks: AsyncIterable<readonly Row[]>
  /** Whether what came so far has letters in it that are not seen, see {@link hidesLetters}. */
  hides(): boolean
}

/** One input, or many. */
export type Input = { readonly type: 'one'; readonly value: unknown } | Rows

/** A producer that sends a whole JSON object, and neither ends nor goes on for this long, sends rows. */
const PATIENCE_MS = 250

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
  let hidden = false
  async function* watched() {
    for await (const chunk of decoded(bytesOf(name, streams))) {
      hidden ||= hidesLetters(chunk)
      yield chunk
    }
  }
  if (isYaml(name)) {
    const { yamlDocument } = await import('../order/yaml.ts')
    return { type: 'one', value: yamlDocument(await readTextFile(name, streams), name).toJS() }
  }
  const rows = (blocks: AsyncIterable<readonly Row[]>): Rows => ({
    type: 'rows',
    blocks,
    hides: () => hidden,
  })
  const peeker = new Peeker(watched())
  if (!(await peeker.until((head) => plain(head) !== ''))) {
    throw new CalcError('missing-input', `${name === '-' ? 'Standard input' : name} is empty.`, {
      hint: 'Give a JSON object, a JSON object a line, or CSV rows under a line of field names.',
    })
  }
  const lines = () => lineBlocks(withoutMark(peeker.all()))
  if (/\.csv$/iu.test(name) || !/^[[{]/u.test(plain(peeker.head))) {
    const { csvRows } = await import('./csv-rows.ts')
    return rows(csvRows(lines(), fields))
  }
  if (/\.(?:ndjson|jsonl)$/iu.test(name) || (await isLinewise(peeker))) {
    return rows(jsonLines(lines()))
  }
  const value = parseJson(plain(await joined(peeker.all())))
  return Array.isArray(value) ? rows(listRows(value)) : { type: 'one', value }
}

async function* bytesOf(name: string, streams: Streams): AsyncIterable<Uint8Array | string> {
  try {
    yield* name === '-' ? streams.stdin : streams.openFile(name)
  } catch (error) {
    throw unreadable(name === '-' ? 'Standard input' : `The file ${name}`, error)
  }
}

/** Without the byte-order mark and what is blank before the text. */
const plain = (text: string) => text.replace(/^\uFEFF/u, '').trimStart()

async function* withoutMark(chunks: AsyncIterable<string>): AsyncIterable<string> {
  let first = true
  for await (const chunk of chunks) {
    yield first ? chunk.replace(/^\uFEFF/u, '') : chunk
    first = false
  }
}

/**
 * Whether objects stand on a line each: the first line is one by itself and something follows, or the
 * second begins one, as no line inside a JSON text can.
 */
async function isLinewise(peeker: Peeker): Promise<boolean> {
  if (!plain(peeker.head).startsWith('{')) return false
  const split = () => /^(.*?)\r?\n\s*(\S?)/su.exec(plain(peeker.head))
  if (!(await peeker.until(() => split() !== null))) return false
  const whole = isJson(split()?.[1] ?? '')
  const more = await peeker.until(
    () => (split()?.[2] ?? '') !== '',
    whole ? PATIENCE_MS : undefined,
  )
  // Not ended and nothing more: a line that came by itself is a row.
  if (!more) return whole && !peeker.ended
  return whole || split()?.[2] === '{'
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

async function* jsonLines(blocks: AsyncIterable<readonly Line[]>): AsyncIterable<readonly Row[]> {
  let row = 0
  for await (const lines of blocks) {
    const rows: Row[] = []
    for (const line of lines) {
      if (typeof line === 'string' && line.trim() === '') continue
      row += 1
      rows.push(rowOf(row, line))
    }
    yield rows
  }
}

function rowOf(row: number, line: Line): Row {
  if (typeof line !== 'string') return { row, error: tooLong() }
  try {
    return { row, value: parseJson(line) }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return { row, error }
  }
}

async function* listRows(list: readonly unknown[]): AsyncIterable<readonly Row[]> {
  yield list.map((value, index) => ({ row: index + 1, value }))
}
