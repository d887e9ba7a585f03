import data from '../../../data/service/evacuation.json' with { type: 'json' }
import { fillIn } from '../../sentence.ts'

/** What the step says, as prose that can be read and edited apart from it. */
export const sentences = data

export type Because = keyof typeof data.because

/** The reason of a verdict, its numbers filled in. */
export const because = (id: Because, values: Readonly<Record<string, string | number>> = {}) =>
  fillIn(data.because[id], values)
