import { CalcError, ERROR_CODES, type ErrorCode } from './errors.ts'
import { renamedTo } from './fields/renamed.ts'
import { nearestNames } from './nearest.ts'

/** What zod found, as far as it is told on. */
export interface Issue {
  readonly code?: string
  readonly message: string
  readonly path: readonly PropertyKey[]
  readonly keys?: readonly string[]
  readonly values?: readonly unknown[]
  readonly expected?: string
  /** Of a size out of bounds: of what, and the bound. */
  readonly origin?: string
  readonly minimum?: number
  readonly maximum?: number
  /** Of a union: what each of its variants found. */
  readonly errors?: readonly (readonly Issue[])[]
  readonly params?: { readonly calc?: { readonly code: string; readonly hint: string } }
}

const WANTED: Readonly<Record<string, string>> = {
  string: 'A text',
  number: 'A number',
  int: 'A whole number',
  boolean: 'true or false',
  array: 'A list',
  object: 'An object with named fields',
  record: 'An object with named fields',
}

/** Places of further faults that an error names, so that not each takes a try of its own. */
const MOST_PLACES = 6

/**
 * The project's error for the first fault that a schema found; the hint names where the others are.
 *
 * @param raw - What was given, to tell a wrong value from a missing one and to quote it.
 * @param fields - Names that the input knows, to find the one that was meant.
 */
export function issueError(
  issues: readonly Issue[],
  raw: unknown,
  fields: readonly string[] = [],
): CalcError {
  // A misspelt field explains a missing one, so it is named first.
  const issue = issues.find(({ code }) => code === 'unrecognized_keys') ?? issues[0]
  if (!issue) return new CalcError('bad-input', 'The input does not fit.')
  const absent = issues.filter((other) => isMissing(other, raw))
  if (absent.length > 1 && absent.length === issues.length) return allMissing(absent)
  const error = faultOf(issue, raw, fields)
  const others = issues.filter((other) => other !== issue).map(({ path }) => path.join('.'))
  const places = [...new Set(others)].filter((place) => place !== '').slice(0, MOST_PLACES)
  if (places.length === 0) return error
  return new CalcError(error.code, error.message, {
    path: error.path,
    hint: `${error.hint} Look at ${places.join(', ')} too.`.trim(),
  })
}

/** Nothing stands in the input where something is needed. */
function isMissing({ code, message, path, params }: Issue, raw: unknown): boolean {
  if (params?.calc) return params.calc.code === 'missing-input'
  const place = path.map((part) => (typeof part === 'symbol' ? String(part) : part))
  return (
    (code === 'invalid_type' && missing(message)) ||
    (code === 'invalid_value' && valueAt(raw, place) === undefined)
  )
}

/** Everything that is missing in one sentence, so that not each takes a try of its own. */
function allMissing(issues: readonly Issue[]): CalcError {
  const names = issues.map(({ path }) => `"${path.join('.')}"`)
  const last = names.at(-1) ?? ''
  return new CalcError(
    'missing-input',
    `${names.slice(0, -1).join(', ')} and ${last} are missing.`,
    {
      path: (issues[0]?.path ?? []).map((part) => (typeof part === 'symbol' ? String(part) : part)),
      hint: 'Give each of them; the description of a field says what it takes.',
    },
  )
}

function faultOf(issue: Issue, raw: unknown, fields: readonly string[]): CalcError {
  const path = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part))
  const calc = issue.params?.calc
  if (calc) {
    const code = ERROR_CODES.find((entry): entry is ErrorCode => entry === calc.code)
    const absent = code === 'missing-input' && valueAt(raw, path) === undefined
    const message = absent ? `${nameOf(path)} is missing.` : issue.message
    return new CalcError(code ?? 'bad-input', message, { path, hint: calc.hint })
  }
  switch (issue.code) {
    case 'unrecognized_keys':
      return unknownField(issue, path, path.length === 0 ? fields : [])
    case 'invalid_type':
      return wrongType(issue, path)
    case 'invalid_value':
      return notAmong(issue, path, raw)
    case 'invalid_union':
      return noVariant(issue, path, raw)
    case 'too_small':
    case 'too_big':
      return outOfBounds(issue, path)
    default:
      return new CalcError('bad-input', `${issue.message}.`.replace(/\.\.$/u, '.'), { path })
  }
}

type Path = readonly (string | number)[]

/** The field at the end of a path; of a list its entry, counted from one as people count. */
function nameOf(path: Path): string {
  const last = path.at(-1)
  if (last === undefined) return 'The input'
  if (typeof last === 'string') return `"${last}"`
  const list = path.slice(0, -1)
  return list.length === 0 ? `Entry ${last + 1}` : `Entry ${last + 1} of ${nameOf(list)}`
}

/** The same inside a sentence. */
const nameIn = (path: Path) => nameOf(path).replace(/^[TE]/u, (letter) => letter.toLowerCase())

/** Names that an error quotes; and of each so many letters. */
const MOST_NAMES = 6
const LONGEST_NAME = 60

function unknownField({ keys = [] }: Issue, path: Path, fields: readonly string[]): CalcError {
  const renamed = keys.flatMap((key) => {
    const now = renamedTo(key, fields)
    return now.length === 0 ? [] : [`"${key}" is now called "${now.join('" or "')}"`]
  })
  if (renamed.length > 0) {
    return new CalcError('bad-input', `${renamed.join('; ')}.`, {
      path: [...path, ...keys.slice(0, 1)],
      hint: 'Use the new name; the value stays as it is.',
    })
  }
  const quoted = keys.slice(0, MOST_NAMES).map((key) => `"${key.slice(0, LONGEST_NAME)}"`)
  const others = keys.length - quoted.length
  const named = quoted.join(', ') + (others > 0 ? ` and ${others} more` : '')
  const nearest = nearestNames(keys[0] ?? '', fields)
  return new CalcError('bad-input', `Unknown field ${named}.`, {
    path: [...path, ...keys.slice(0, 1).map((key) => key.slice(0, LONGEST_NAME))],
    hint:
      nearest.length > 0
        ? `Did you mean ${nearest.join(' or ')}?`
        : 'Leave it out, or look up the field names in the help or the API description.',
  })
}

/** What zod calls what it received, in words. */
const GIVEN: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  NaN: 'no number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
}

const missing = (message: string) => message.endsWith('received undefined')

function wrongType({ message, expected = '' }: Issue, path: Path): CalcError {
  const wanted = WANTED[expected] ?? 'Something else'
  if (missing(message)) {
    return new CalcError('missing-input', `${nameOf(path)} is missing.`, {
      path,
      hint: `${wanted} is needed.`,
    })
  }
  const given = /received (\w+)$/u.exec(message)?.[1]
  return new CalcError('bad-input', `${wanted} is needed here.`, {
    path,
    hint: given === undefined ? '' : `${nameOf(path)} is ${GIVEN[given] ?? given}.`,
  })
}

function notAmong({ values = [] }: Issue, path: Path, raw: unknown): CalcError {
  const given = valueAt(raw, path)
  const hint = `It takes: ${values.map(String).join(', ')}.`
  if (given === undefined) {
    return new CalcError('missing-input', `${nameOf(path)} is missing.`, { path, hint })
  }
  const quoted =
    typeof given === 'string' || typeof given === 'number'
      ? `"${String(given).slice(0, 60)}"`
      : 'This'
  const message = `${quoted} is not one of the values that ${nameIn(path)} takes.`
  return new CalcError('bad-input', message, { path, hint })
}

const OF_SIZE: Readonly<Record<string, string>> = { string: 'character', array: 'entry' }

function outOfBounds({ code, origin = '', minimum, maximum }: Issue, path: Path): CalcError {
  const name = nameOf(path)
  const least = code === 'too_small'
  const bound = `${least ? 'at least' : 'at most'} ${least ? minimum : maximum}`
  const thing = OF_SIZE[origin]
  if (thing === undefined) {
    return new CalcError('bad-input', `${name} is out of bounds.`, { path, hint: `Give ${bound}.` })
  }
  if (least && minimum === 1) {
    return new CalcError('missing-input', `${name} is empty.`, {
      path,
      hint: `Give at least one ${thing}, or leave the field out if it may be.`,
    })
  }
  const size = `${bound} ${thing === 'entry' ? 'entries' : `${thing}s`}`
  return new CalcError('bad-input', `${name} is too ${least ? 'short' : 'long'}.`, {
    path,
    hint: `It takes ${size}.`,
  })
}

/** What stands in the input at a path, or undefined. */
function valueAt(raw: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, part)
        ? (value as Record<string | number, unknown>)[part]
        : undefined,
    raw,
  )
}

/** The variant that got furthest into the input is the one that was meant. */
function noVariant({ errors = [], path: at }: Issue, path: Path, raw: unknown): CalcError {
  const depth = (issues: readonly Issue[]) => issues[0]?.path.length ?? 0
  const [first, ...others] = errors.filter((issues) => issues.length > 0)
  if (!first) {
    return new CalcError('bad-input', 'This fits none of the forms that the field takes.', { path })
  }
  const best = others.reduce(
    (found, issues) => (depth(issues) > depth(found) ? issues : found),
    first,
  )
  const above = at.map((part) => (typeof part === 'symbol' ? String(part) : part))
  return issueError(best, valueAt(raw, above)).under(...above)
}
