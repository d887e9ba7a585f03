import { CalcError } from '../../shared/errors.ts'
import { type Field, fieldNamed, parseJson, putText } from '../../shared/input/index.ts'
import { readTextFile } from '../input/read-file.ts'
import type { Streams } from '../streams.ts'
import { isYaml } from './yaml-name.ts'

/** A value to be written into an order, and where. */
export interface Entry {
  readonly path: readonly string[]
  readonly value: unknown
}

/**
 * `readings.suctionPressure=32 psig` as a value at its place.
 *
 * @throws {CalcError} `bad-input` for a name that the order has not, or no `=`.
 */
export function entriesOf(texts: readonly string[], fields: readonly Field[]): readonly Entry[] {
  return texts.map((text) => {
    const [, name = '', value = ''] = /^\s*([\w.-]+)\s*=\s*(.*)$/su.exec(text) ?? []
    if (name === '') {
      throw new CalcError('bad-input', `"${text.slice(0, 60)}" is not of the form name=value.`, {
        hint: 'Write it like --set "readings.suctionPressure=32 psig".',
      })
    }
    const record: Record<string, unknown> = {}
    putText(record, fields, name, value.trim())
    return { path: pathOf(name, fields), value: valueAt(record) }
  })
}

/** The names as the order has them, whatever their spelling was. */
function pathOf(name: string, fields: readonly Field[]): readonly string[] {
  const path: string[] = []
  let known = fields
  for (const part of name.split('.')) {
    const field = fieldNamed(known, part)
    path.push(field?.name ?? part)
    known = field?.shape.type === 'record' ? field.shape.fields : []
  }
  return path
}

/** The one value in a record of records of one entry each. */
function valueAt(record: unknown): unknown {
  let value = record
  while (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    const [only, ...more] = Object.values(value)
    if (more.length > 0 || only === undefined) return value
    value = only
  }
  return value
}

/** The entries as an input of their own, to lay over what the file says. */
export function inputOf(entries: readonly Entry[]): Record<string, unknown> {
  const input: Record<string, unknown> = {}
  for (const { path, value } of entries) {
    let place = input
    for (const name of path.slice(0, -1)) {
      const next = place[name]
      place[name] = typeof next === 'object' && next !== null ? next : {}
      place = place[name] as Record<string, unknown>
    }
    place[path.at(-1) ?? ''] = value
  }
  return input
}

/** Writes the entries into the file of an order, all or nothing; comments and order stay as they were. */
export async function saveInto(
  file: string,
  entries: readonly Entry[],
  streams: Streams,
): Promise<void> {
  const text = await readTextFile(file, streams)
  await streams.writeFile(
    file,
    isYaml(file) ? await intoYaml(text, file, entries) : intoJson(text, entries),
  )
}

async function intoYaml(text: string, file: string, entries: readonly Entry[]): Promise<string> {
  // Loaded only where it is needed: it costs more than the answer.
  const { yamlDocument } = await import('./yaml.ts')
  const document = yamlDocument(text, file)
  for (const { path, value } of entries) document.setIn(path, value)
  return document.toString({ lineWidth: 0 })
}

function intoJson(text: string, entries: readonly Entry[]): string {
  const order = parseJson(text) as Record<string, unknown>
  for (const { path, value } of entries) {
    let place = order
    for (const name of path.slice(0, -1)) {
      const next = place[name]
      place[name] = typeof next === 'object' && next !== null ? next : {}
      place = place[name] as Record<string, unknown>
    }
    place[path.at(-1) ?? ''] = value
  }
  return `${JSON.stringify(order, null, 2)}\n`
}
