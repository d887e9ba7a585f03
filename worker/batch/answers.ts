import { answerText } from '../../shared/answer/answer-text.ts'
import type { Operation } from '../../shared/operation.ts'
import { jsonText, printable } from '../../shared/visible.ts'
import { thrownProblem } from '../problem.ts'
import type { Item } from './items.ts'

/** Work between two pauses: what waits beside a batch waits for a few light items or for one heavy one. */
const WORK_BETWEEN_PAUSES = 20
/** Time between two, ms, where a clock goes on while there is work: at the edge it stands still. */
const MS_BETWEEN_PAUSES = 10

/** How the items of a batch stand in its body. */
interface Form {
  readonly before: string
  readonly between: string
  readonly after: string
}
export const LIST: Form = { before: '[', between: ',\n', after: ']\n' }
export const LINES: Form = { before: '', between: '\n', after: '\n' }

/**
 * The answers as a body that is computed as it is read: other requests are answered in between, and
 * whoever stops reading stops the work.
 *
 * @param hides - Whether the body hid letters that are not seen.
 */
export function batchBody(
  operation: Operation,
  items: readonly Item[],
  { before, between, after }: Form,
  hides: boolean,
): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder()
  let next = 0
  return new ReadableStream({
    async pull(controller) {
      if (next > 0) await pause()
      let text = ''
      let work = 0
      const end = Date.now() + MS_BETWEEN_PAUSES
      while (next < items.length && work < WORK_BETWEEN_PAUSES && Date.now() < end) {
        const item = items[next]
        if (item === undefined) break
        text += (next === 0 ? before : between) + answered(operation, item, hides)
        work += item.work
        next += 1
      }
      const ended = next >= items.length
      controller.enqueue(encoder.encode(ended ? text + after : text))
      if (ended) controller.close()
    },
  })
}

/** `{ row, answer }`, or `{ row, problem }` with what would have been the answer to it alone. */
function answered(operation: Operation, item: Item, hides: boolean): string {
  const { row } = item
  try {
    if (item.error) throw item.error
    return printable(`{"row":${row},"answer":${answerText(operation, item.input)}}`, hides)
  } catch (error) {
    const problem = thrownProblem(error)
    return jsonText({ row, problem })
  }
}

/** Lets everything else that is ready go first. Node's own way costs microseconds; a timer is there everywhere. */
const pause = () =>
  new Promise<void>((resolve) => {
    if (typeof setImmediate === 'function') setImmediate(resolve)
    else setTimeout(resolve)
  })
