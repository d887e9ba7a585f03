import type { CalcError } from '../../shared/errors.ts'
import { kebab } from '../../shared/input/index.ts'
import { visible } from '../../shared/visible.ts'
import type { Streams } from '../streams.ts'
import { inkOf } from './ink.ts'
import { hanging } from './wrap.ts'

/** "error: what was wrong (where)" and what would do instead. */
export function errorText(error: CalcError, streams: Streams): string {
  const ink = inkOf(streams.color.err)
  const where = error.path.length > 0 ? ` (${pathText(error.path)})` : ''
  const lines = hanging(ink.error('error:'), visible(error.message + where), 7, streams.width)
  const hint = error.hint === '' ? [] : hanging('try:', visible(error.hint), 7, streams.width)
  return `${[...lines, ...hint].join('\n')}\n`
}

/** `['parts', 0, 'labelCharge']` to "parts 1, label-charge": lists count from one for people. */
export function pathText(path: readonly (string | number)[]): string {
  return path
    .map((part) => (typeof part === 'number' ? ` ${part + 1}` : `, ${kebab(part)}`))
    .join('')
    .replace(/^,? /u, '')
}
