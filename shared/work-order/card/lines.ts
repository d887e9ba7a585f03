import data from '../../../data/service/card.json' with { type: 'json' }
import { Blank, type Sentence, sentence } from '../../answer/sentence.ts'
import type { Kind, Quantity } from '../../quantity/index.ts'

export type StepId = keyof typeof data.titles
export type TaskId = keyof typeof data.tasks
export type RecordId = keyof typeof data.records

/** A line of the card: something to do with a box before it, or a figure and what it means. */
export interface Line {
  readonly text: Sentence
  /** Whether its box is ticked; undefined where there is none, since it is no task. */
  readonly ticked?: boolean | undefined
}

type Values = Readonly<Record<string, Quantity | Blank | string | undefined>>

/** Whether anything is still to be written into a line. */
const isOpen = (values: Values) =>
  Object.values(values).some((value) => value === undefined || value instanceof Blank)

/** A task; it is done where figures were asked for and all of them were written down. */
export function task(id: TaskId, values: Values = {}): Line {
  const asked = Object.keys(values).length > 0
  return { text: sentence(data.tasks[id].text, values), ticked: asked && !isOpen(values) }
}

/** An entry of the records; ticked once it is filled. */
export const record = (id: RecordId, values: Values = {}): Line => ({
  text: sentence(data.records[id], values),
  ticked: Object.keys(values).length > 0 && !isOpen(values),
})

/** A figure and what it means: nothing to tick. */
export const told = (text: Sentence): Line => ({ text })

/** What was written down, or a blank with the unit that it is written in. */
export const written = <Q extends Quantity>(value: Q | undefined, kind: Kind): Q | Blank =>
  value ?? new Blank(kind)

export const titleOf = (id: StepId): string => data.titles[id]
export const jobName = (job: keyof typeof data.jobs): string => data.jobs[job]
