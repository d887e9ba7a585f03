import { headlineOf, sentence } from '../../answer/sentence.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import type { Outcome } from '../section.ts'
import { finishedText, isOpen, plainly, says, told, type Values } from './lines.ts'
import type { Line } from './schema.ts'

/** What a step of the card is built from. */
export interface Built {
  readonly lines: readonly Line[]
  /** Whether it asks for figures. */
  readonly asks: boolean
  /** The one line that is left once they are written down and nothing speaks against them. */
  readonly finished?: Line | undefined
}

export type Build = (input: WorkOrderInput, outcomes: Outcomes) => Built

/** A step of tasks alone: it is ticked on paper. */
export const onPaper = (...lines: readonly Line[]): Built => ({ lines, asks: false })

/**
 * A step that asks for figures.
 *
 * @param values - All that it asks for; it is finished once none is open and `settled` holds.
 * @param words - What its last line says beside them, such as a verdict.
 */
export function asking(
  id: Parameters<typeof finishedText>[0],
  lines: readonly Line[],
  values: Values,
  settled = true,
  words: Values = {},
): Built {
  const done = settled && !isOpen(values)
  return {
    lines,
    asks: true,
    finished: done
      ? told(sentence(`done: ${finishedText(id)}`, { ...values, ...words }))
      : undefined,
  }
}

/** Whether nothing that a step found speaks against going on. */
export const isSettled = (outcome: Outcome<unknown>): boolean =>
  outcome.state === 'absent' ||
  (outcome.state === 'done' &&
    ['fine', 'information'].includes(outcome.computation.told?.level ?? 'information'))

/** Whether a step has its answer, and that forbids nothing. */
export const isAnswered = (outcome: Outcome<unknown>): boolean =>
  outcome.state === 'done' && outcome.computation.told?.level !== 'stop'

/**
 * What a step found in its headline, or what it still needs; what stands among the stop-lines is not
 * said again.
 */
export function outcomeLines(outcome: Outcome<unknown>): readonly Line[] {
  switch (outcome.state) {
    case 'absent':
      return []
    case 'done': {
      const { told: answer } = outcome.computation
      if (!answer) return []
      return [answer.level === 'stop' ? says('stopped') : told(headlineOf(answer))]
    }
    case 'failed': {
      const { message, hint, stop } = outcome.problem
      return [stop ? says('stopped') : told(plainly(`${message} ${hint}`.trim()))]
    }
    case 'missing':
      return [told(plainly(outcome.problem.message))]
  }
}
