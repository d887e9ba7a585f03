import { CalcError } from '../errors.ts'
import { type Field, readText, type Shape } from '../input/index.ts'

/** What stands in a form: texts as typed, ticks, and groups and lists of these. */
export type DraftValue = string | boolean | Draft | readonly DraftValue[] | undefined
export interface Draft {
  readonly [name: string]: DraftValue
}

export const isDraft = (value: unknown): value is Draft =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Whether nothing is filled in. */
export function isEmpty(value: DraftValue): boolean {
  if (value === undefined || value === '') return true
  if (typeof value === 'string') return value.trim() === ''
  if (typeof value === 'boolean') return false
  return Object.values(value).every(isEmpty)
}

export interface FormInput {
  readonly input: Readonly<Record<string, unknown>>
  /** A path of the input as the form has it: empty rows of a list are left out of the input. */
  readonly placeOf: (path: readonly (string | number)[]) => readonly (string | number)[]
}

/**
 * The input that a filled form stands for; what is empty is left out.
 *
 * @throws {CalcError} `bad-input` for a text that is no number where one is needed, with its path in the form.
 */
export function inputOf(fields: readonly Field[], draft: Draft): FormInput {
  const rows = new Map<string, readonly number[]>()
  const input = recordOf(fields, draft, [], rows)
  return { input, placeOf: (path) => placeIn(path, rows) }
}

type Path = readonly (string | number)[]
type Rows = Map<string, readonly number[]>

const keyOf = (path: Path) => path.join('.')

function recordOf(fields: readonly Field[], draft: Draft, path: Path, rows: Rows) {
  const record: Record<string, unknown> = {}
  for (const field of fields) {
    const value = draft[field.name]
    if (isEmpty(value)) continue
    const below = [...path, field.name]
    record[field.name] = inputValue(field, field.shape, value, below, rows)
  }
  return record
}

function inputValue(
  field: Field,
  shape: Shape,
  value: DraftValue,
  path: Path,
  rows: Rows,
): unknown {
  if (Array.isArray(value)) {
    const item = shape.type === 'list' ? shape.item : shape
    const filled = value.flatMap((entry, index) => (isEmpty(entry) ? [] : [index]))
    rows.set(keyOf(path), filled)
    return filled.map((index) => inputValue(field, item, value[index], [...path, index], rows))
  }
  if (isDraft(value))
    return shape.type === 'record' ? recordOf(shape.fields, value, path, rows) : value
  return typeof value === 'string' ? textValue({ ...field, shape }, value.trim(), path) : value
}

/** A text is read without knowing where it stands. */
function textValue(field: Field, text: string, path: Path): unknown {
  try {
    return readText(field, text)
  } catch (error) {
    throw error instanceof CalcError ? error.with({ path }) : error
  }
}

function placeIn(path: Path, rows: Rows): Path {
  const place: (string | number)[] = []
  for (const part of path) {
    const row = typeof part === 'number' ? rows.get(keyOf(place))?.[part] : undefined
    place.push(row ?? part)
  }
  return place
}

/** How an input stands in a form: the example of an operation, or an order from a file. */
export function draftOf(input: unknown): DraftValue {
  if (input === undefined || input === null) return undefined
  if (typeof input === 'boolean' || typeof input === 'string') return input
  if (Array.isArray(input)) return input.map(draftOf)
  if (typeof input !== 'object') return String(input)
  const { value, unit, plusMinus } = input as Record<string, unknown>
  if (typeof value === 'number' && typeof unit === 'string') {
    return `${value}${plusMinus === undefined ? '' : ` ±${plusMinus}`} ${unit}`
  }
  return Object.fromEntries(Object.entries(input).map(([name, entry]) => [name, draftOf(entry)]))
}

/** The draft with one value set at a path; what is on the way is made. */
export function withValue(draft: Draft, path: Path, value: DraftValue): Draft {
  return setAt(draft, path, value) as Draft
}

function setAt(at: DraftValue, [first, ...rest]: Path, value: DraftValue): DraftValue {
  if (first === undefined) return value
  if (typeof first === 'number') {
    const list = Array.isArray(at) ? [...at] : []
    list[first] = setAt(list[first], rest, value)
    return list
  }
  const record = isDraft(at) ? at : {}
  return { ...record, [first]: setAt(record[first], rest, value) }
}

/** The value at a path. */
export function valueAt(draft: DraftValue, path: Path): DraftValue {
  return path.reduce<DraftValue>(
    (at, part) =>
      typeof part === 'number'
        ? Array.isArray(at)
          ? at[part]
          : undefined
        : isDraft(at)
          ? at[part]
          : undefined,
    draft,
  )
}
