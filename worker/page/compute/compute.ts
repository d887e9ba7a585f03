import type { Operation } from '../../../shared/operation.ts'
import { isOperationName } from '../operations.ts'
import { redraw } from '../redraw.ts'
import type { Asked } from './apart.ts'
import { type Outcome, received, run, type Sent } from './outcome.ts'

/**
 * What a letter may take here, ms: a phone takes about four times as long, and more than 50 ms is felt.
 * What took longer once goes to a thread of its own, and the page shows the last answer meanwhile.
 */
const MOST_MS = 10

const slow = new Set<string>()
const last = new Map<string, { readonly key: string; readonly outcome: Outcome }>()

/** What an operation says to an input, or said to the last one while it still works. */
export function outcomeNow(operation: Operation, input: unknown): Outcome {
  const { name } = operation
  if (slow.has(name) && isOperationName(name)) return outcomeApart({ name, input })
  const start = performance.now()
  const outcome = run(operation, input)
  if (performance.now() - start > MOST_MS) slow.add(name)
  return outcome
}

/** Whether the answer that stands is of an earlier letter. */
export const isWorking = (): boolean => busy !== undefined

let thread: Worker | undefined
let busy: { readonly asked: Asked; readonly key: string } | undefined
let waiting: { readonly asked: Asked; readonly key: string } | undefined

function outcomeApart(asked: Asked): Outcome {
  const key = JSON.stringify(asked)
  const before = last.get(asked.name)
  if (before?.key === key) return before.outcome
  // Only the newest letter is worth an answer.
  if (busy) waiting = busy.key === key ? undefined : { asked, key }
  else send({ asked, key })
  return before?.outcome ?? { kind: 'nothing' }
}

function send(next: { readonly asked: Asked; readonly key: string }): void {
  busy = next
  thread ??= started()
  thread.postMessage(next.asked)
}

function started(): Worker {
  const worker = new Worker('/compute.js', { type: 'module' })
  const done = (outcome: Outcome) => {
    if (busy) last.set(busy.asked.name, { key: busy.key, outcome })
    busy = undefined
    if (waiting) send(waiting)
    waiting = undefined
    redraw()
  }
  worker.onmessage = ({ data }: MessageEvent<Sent>) => done(received(data))
  worker.onerror = ({ message }) => {
    // A browser that gives no thread computes here, however long it takes.
    slow.clear()
    thread = undefined
    done({ kind: 'fault', message })
  }
  return worker
}
