import type { CalcError } from '../../shared/errors.ts'
import { fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { visible } from '../../shared/visible.ts'
import { exampleText } from '../example.ts'
import type { Streams } from '../streams.ts'
import { inkOf } from './ink.ts'
import { hanging } from './wrap.ts'

const COLUMNS = 7

/**
 * "error: what was wrong (where)", what would do instead, and for a missing input a line that works.
 *
 * Fields are named as options: `--spill-volume` for `spillVolume`.
 */
export function errorText(error: CalcError, streams: Streams, operation?: Operation): string {
  const ink = inkOf(streams.color.err)
  const asOptions = namer(operation)
  const where = error.path.length > 0 ? ` (${pathText(error.path)})` : ''
  const word = ink.error(error.level === 'stop' ? 'STOP:' : 'error:')
  const lines = hanging(word, visible(asOptions(error.message) + where), COLUMNS, streams.width)
  const hint =
    error.hint === '' ? [] : hanging('try:', visible(asOptions(error.hint)), COLUMNS, streams.width)
  const example =
    operation && error.code === 'missing-input'
      ? exampleText(operation, streams.width - COLUMNS).split('\n')
      : []
  const works = example.map((line, index) => (index === 0 ? `like:  ${line}` : `       ${line}`))
  return `${[...lines, ...hint, ...works].join('\n')}\n`
}

/** Replaces the names of fields by their options: those in quotation marks, and those spelt otherwise. */
function namer(operation: Operation | undefined): (text: string) => string {
  const names = operation ? fieldsOf(operation).map(({ name }) => name) : []
  if (names.length === 0) return (text) => text
  const otherwise = names.filter((name) => kebab(name) !== name)
  const pattern = new RegExp(
    `"(${names.join('|')})"|\\b(${[...otherwise, '(?!)'].join('|')})\\b`,
    'gu',
  )
  return (text) =>
    text.replace(
      pattern,
      (_, quoted?: string, plain?: string) => `--${kebab(quoted ?? plain ?? '')}`,
    )
}

/** `['parts', 0, 'labelCharge']` to "parts 1, label-charge": lists count from one for people. */
export function pathText(path: readonly (string | number)[]): string {
  return path
    .map((part) => (typeof part === 'number' ? ` ${part + 1}` : `, ${kebab(part)}`))
    .join('')
    .replace(/^,? /u, '')
}
