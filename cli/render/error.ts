import { cautions } from '../../shared/cautions.ts'
import type { CalcError } from '../../shared/errors.ts'
import { fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { visible } from '../../shared/visible.ts'
import { everydayText } from '../example.ts'
import type { Streams } from '../streams.ts'
import { dangerText } from './dangers.ts'
import { inkOf } from './ink.ts'
import { optionNamer } from './option-namer.ts'
import { hanging } from './wrap.ts'

const COLUMNS = 7

/**
 * "error: what was wrong (where)", what would do instead, and for a missing input a line that works.
 */
export function errorText(error: CalcError, streams: Streams, operation?: Operation): string {
  const ink = inkOf(streams.color.err)
  const asOptions = optionNamer(operation)
  const message = asOptions(error.message)
  const word = ink.error(error.level === 'stop' ? 'STOP:' : 'error:')
  const lines = hanging(word, visible(message + whereText(error, message)), COLUMNS, streams.width)
  const tip = asOptions(hintOf(error, operation))
  const hint = tip === '' ? [] : hanging('try:', visible(tip), COLUMNS, streams.width)
  const works =
    operation && (error.code === 'missing-input' || error.code === 'wrong-kind')
      ? everydayText(operation, streams.width - COLUMNS)?.split('\n')
      : undefined
  const like = works?.map((line, index) => (index === 0 ? `like:  ${line}` : `       ${line}`))
  const dangers = error.level === 'stop' ? dangerText(cautions(error.cautions)) : ''
  const danger =
    dangers === '' ? [] : hanging(ink.level.danger('danger:'), dangers, COLUMNS + 1, streams.width)
  return `${[...lines, ...hint, ...danger, ...(like ?? [])].join('\n')}\n`
}

/** Where in the input it was, unless the message says so. */
function whereText({ path }: CalcError, message: string): string {
  if (path.length === 0) return ''
  const text = pathText(path)
  return message.includes(`--${text}`) ? '' : ` (${text})`
}

/** What would do; of a missing text the description of its field says more. */
function hintOf({ code, path, hint }: CalcError, operation: Operation | undefined): string {
  const [name, ...deeper] = path
  if (code !== 'missing-input' || hint !== 'A text is needed.' || deeper.length > 0) return hint
  const field = operation && fieldsOf(operation).find((entry) => entry.name === name)
  return field ? `${field.description}.` : hint
}

/** `['parts', 0, 'labelCharge']` to "parts 1, label-charge": lists count from one for people. */
export function pathText(path: readonly (string | number)[]): string {
  return path
    .map((part) => (typeof part === 'number' ? ` ${part + 1}` : `, ${kebab(part)}`))
    .join('')
    .replace(/^,? /u, '')
}
