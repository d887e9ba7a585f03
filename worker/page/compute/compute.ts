import type { KindName } from '../../../shared/diagram/index.ts'
import type { Operation } from '../../../shared/operation.ts'
import { isOperationName, type OperationName } from '../operations.ts'
import { redraw } from '../redraw.ts'
import type { Asked, Told } from './apart.ts'
import { type Outcome, received, run } from './outcome.ts'

/**
 * What a letter may take here, ms: a phone takes about four times as long, and more than 50 ms is felt.
 * What took longer once goes to a thread of its own, and the page shows the last answer meanwhile.
 */
const MOST_MS = 10

/** What takes longer from the first letter on: the model, and all steps at once. */
const slow = new Set(['diagnose', 'simulate', 'lesson', 'work-order'])

/**
 * What an operation says to an input, or said to the last one while it still works.
 *
 * @param about - What it is about, where a page asks one operation about several things: the last answer about another is none.
 */
export function outcomeNow(operation: Operation, input: unknown, about = ''): Outcome {
  const { name } = operation
  if (slow.has(name) && isOperationName(name)) {
    const told = toldApart(name + about, { name, input })
    return told === undefined || 'svg' in told ? { kind: 'nothing' } : received(told)
  }
  const start = performance.now()
  const outcome = run(operation, input)
  if (performance.now() - start > MOST_MS) slow.add(name)
  return outcome
}

/** The text of a picture, or of the last one while it is drawn; undefined before the first, and where there is none. */
export function pictureNow(
  name: OperationName,
  kind: KindName,
  input: unknown,
  width: number,
  about = '',
): string | undefined {
  const told = toldApart(pictureChannel(name, kind) + about, {
    name,
    input,
    picture: { kind, width },
  })
  return told !== undefined && 'svg' in told ? told.svg : undefined
}

const pictureChannel = (name: string, kind: KindName) => `${name} ${kind}`

/** Whether a picture is being drawn. */
export const isDrawing = (name: string, kind: KindName, about = ''): boolean =>
  isWorking(pictureChannel(name, kind), about)

interface Question {
  readonly channel: string
  readonly key: string
  readonly asked: Asked
}

/** What was told last on each channel, and how many of them are worth the room. */
const last = new Map<string, { readonly key: string; readonly told: Told }>()
const MOST_KEPT = 40
/** One question at a time; of those that wait only the newest of each channel is worth an answer. */
let busy: Question | undefined
const waiting = new Map<string, Question>()
let thread: Worker | undefined

/** Whether the answer of an operation is of an earlier letter. */
export const isWorking = (name: string, about = ''): boolean =>
  busy?.channel === name + about || waiting.has(name + about)

function toldApart(channel: string, asked: Asked): Told | undefined {
  const key = JSON.stringify(asked)
  const before = last.get(channel)
  if (before?.key === key) waiting.delete(channel)
  else if (busy?.key !== key) {
    waiting.set(channel, { channel, key, asked })
    next()
  }
  return before?.told
}

function next(): void {
  const [question] = waiting.values()
  if (busy || !question) return
  waiting.delete(question.channel)
  busy = question
  thread ??= started()
  thread.postMessage(question.asked)
}

function started(): Worker {
  const worker = new Worker('/compute.js', { type: 'module' })
  const done = (told: Told) => {
    if (busy) last.set(busy.channel, { key: busy.key, told })
    if (last.size > MOST_KEPT) last.delete([...last.keys()][0] ?? '')
    busy = undefined
    next()
    redraw()
  }
  worker.onmessage = ({ data }: MessageEvent<Told>) => done(data)
  worker.onerror = ({ message }) => {
    // A browser that gives no thread computes here, however long it takes.
    slow.clear()
    thread = undefined
    waiting.clear()
    done({ kind: 'fault', message })
  }
  return worker
}
