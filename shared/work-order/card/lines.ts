import data from '../../../data/service/card.json' with { type: 'json' }
import { Blank, type Sentence, sentence } from '../../answer/sentence.ts'
import type { Figure } from '../../answer/told.ts'
import type { Kind, Quantity } from '../../quantity/index.ts'
import type { Line } from './schema.ts'

export type TaskId = keyof typeof data.tasks
export type RecordId = keyof typeof data.records

type Value = Quantity | Blank | Pick<Figure, 'value' | 'step'> | string | undefined
export type Values = Readonly<Record<string, Value>>

/** Whether anything is still to be written into a line. */
export const isOpen = (values: Values): boolean =>
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

/** A sentence of the card's own. */
export const says = (id: keyof typeof data.says, values: Values = {}): Line =>
  told(sentence(data.says[id], values))

/** Ways of which one is taken. */
export const oneOf = (id: keyof typeof data.alternatives): Line => ({
  text: sentence('one of'),
  oneOf: data.alternatives[id].map((text) => sentence(text)),
})

/** Words that a person or a message brought: braces in them are no slots. */
export const plainly = (text: string): Sentence => sentence(text.replace(/[{}]/gu, ''))

/** What people wrote at length stands in whole in the appendix. */
export const shortened = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1).trimEnd()}…`

/** What was written down, or a blank with the unit that it is written in. */
export const written = <Q extends Quantity>(value: Q | undefined, kind: Kind): Q | Blank =>
  value ?? new Blank(kind)

export const titleOf = (id: keyof typeof data.titles): string => data.titles[id]
export const jobName = (job: keyof typeof data.jobs): string => data.jobs[job]

/** What is left of a step once it is done. */
export const finishedText = (id: keyof typeof data.finished): string => data.finished[id]

/** Which program and which data made the card. */

/** Stands before readings that were taken before the work. */
export const BEFORE = data.says['readings-before']

/** Points from a step to the stop-line that it has at the top. */
export const STOPPED = data.says.stopped
