import { CalcError } from '../errors.ts'
import { nearestNames } from '../nearest.ts'
import { type Field, fieldNamed, kebab, type Shape } from './field.ts'
import { parseJson } from './parse-json.ts'

/**
 * The value of a field from one text: a command-line option, a cell of a CSV row, a query parameter.
 *
 * - quantity, text, choice: the text itself (the operation's own schema judges it)
 * - number, flag: read here, since a text is refused where JSON has a number or a boolean
 * - list: JSON, or its items separated by `;` (choices and numbers also by `,`)
 * - record: JSON, or `key=value,key=value`
 *
 * @throws {CalcError} `bad-input` with the path for a text that is no such thing.
 */
export function readText(field: Field, text: string): unknown {
  try {
    return readShape(field.shape, text)
  } catch (error) {
    throw error instanceof CalcError ? error.under(field.name) : error
  }
}

/** One item of a list field, from one of several options of the same name. @throws {CalcError} as {@link readText}. */
export function readItems(field: Field, text: string): readonly unknown[] {
  const value = readText(field, text)
  return Array.isArray(value) ? value : [value]
}

function readShape(shape: Shape, text: string): unknown {
  switch (shape.type) {
    case 'text':
    case 'quantity':
    case 'choice':
      return text
    case 'number':
      return readNumber(text, shape.integer)
    case 'flag':
      return readFlag(text)
    case 'list':
      return readList(shape.item, text)
    case 'record':
      return readRecord(shape.fields, text)
    case 'any':
      return readAny(text)
  }
}

function readNumber(text: string, integer: boolean): number {
  const trimmed = text.trim().replace(/^[−–]/u, '-')
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu.test(trimmed)
    ? Number(trimmed)
    : Number.NaN
  if (!Number.isFinite(value)) {
    throw new CalcError('bad-input', `"${short(text)}" is not a number.`, {
      hint: `Write it with the digits 0 to 9, such as ${integer ? '3' : '3 or 0.5'}, without a unit.`,
    })
  }
  return value
}

const FLAGS: Readonly<Record<string, boolean>> = {
  true: true,
  yes: true,
  '1': true,
  false: false,
  no: false,
  '0': false,
}

function readFlag(text: string): boolean {
  const value = Object.hasOwn(FLAGS, text.trim().toLowerCase())
    ? FLAGS[text.trim().toLowerCase()]
    : undefined
  if (value === undefined) {
    throw new CalcError('bad-input', `"${short(text)}" is neither yes nor no.`, {
      hint: 'It takes: true, yes, 1, false, no, 0.',
    })
  }
  return value
}

function readList(item: Shape, text: string): readonly unknown[] {
  const trimmed = text.trim()
  if (trimmed === '' || trimmed.toLowerCase() === 'none') return []
  if (trimmed.startsWith('[')) {
    const value = parseJson(trimmed)
    if (!Array.isArray(value)) throw new CalcError('bad-input', 'A list is needed here.')
    return value
  }
  // Words and numbers hold no comma, so there it parts items too.
  const plain = item.type === 'choice' || item.type === 'number'
  return trimmed
    .split(plain ? /[;,]/u : ';')
    .filter((part) => part.trim() !== '')
    .map((part, index) => {
      try {
        return readShape(item, part.trim())
      } catch (error) {
        throw error instanceof CalcError ? error.under(index) : error
      }
    })
}

function readRecord(fields: readonly Field[], text: string): unknown {
  const trimmed = text.trim()
  if (trimmed.startsWith('{')) return parseJson(trimmed)
  const record: Record<string, unknown> = {}
  // A comma parts two entries only where a name and "=" follow.
  for (const entry of trimmed.split(/,(?=\s*[\w.-]+\s*=)/u)) {
    const split = /^\s*([\w.-]+)\s*=(.*)$/su.exec(entry)
    if (!split) {
      throw new CalcError('bad-input', `"${short(entry)}" is not of the form name=value.`, {
        hint: `Write it as ${sample(fields)}, or as JSON.`,
      })
    }
    putText(record, fields, split[1] ?? '', (split[2] ?? '').trim())
  }
  return record
}

/** Sets `name` from a text, or `outer.inner` for a record in the record. @throws {CalcError} as {@link readText}. */
export function putText(
  record: Record<string, unknown>,
  fields: readonly Field[],
  name: string,
  text: string,
): void {
  const [outer = '', ...inner] = name.split('.')
  const field = fieldNamed(fields, outer)
  if (!field) throw unknownName(outer, fields)
  if (inner.length > 0 && field.shape.type === 'record') {
    const before = record[field.name]
    const below: Record<string, unknown> =
      typeof before === 'object' && before !== null ? { ...before } : {}
    putText(below, field.shape.fields, inner.join('.'), text)
    record[field.name] = below
  } else {
    record[field.name] = readText(field, text)
  }
}

/** The refusal of a name that is none of `fields`, with the nearest ones. */
export function unknownName(typed: string, fields: readonly Field[]): CalcError {
  const names = fields.map((field) => kebab(field.name))
  const nearest = nearestNames(typed, names)
  return new CalcError('bad-input', `There is no field "${short(typed)}".`, {
    path: [typed],
    hint:
      nearest.length > 0
        ? `Did you mean ${nearest.join(' or ')}?`
        : `There are: ${names.join(', ')}.`,
  })
}

function readAny(text: string): unknown {
  const trimmed = text.trim()
  return /^[[{]/u.test(trimmed) ? parseJson(trimmed) : text
}

const sample = (fields: readonly Field[]) =>
  fields
    .slice(0, 3)
    .map((field) => `${kebab(field.name)}=…`)
    .join(',')

const short = (text: string) => (text.length > 60 ? `${text.slice(0, 57)}…` : text)
