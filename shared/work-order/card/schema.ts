import * as z from 'zod'
import { type Sentence, sentenceOut } from '../../answer/sentence.ts'

/** Steps that a card may have; their titles are in data/service/card.json. */
const CARD_STEP_IDS = [
  'before',
  'measure',
  'part',
  'cab',
  'rejoin',
  'recover',
  'open',
  'replace',
  'oil',
  'leak-test',
  'evacuate',
  'charge',
  'prove',
] as const
export type CardStepId = (typeof CARD_STEP_IDS)[number]

const lineOut = z.strictObject({
  text: sentenceOut.describe('The task, or the figure and what it means'),
  ticked: z.boolean().optional().describe('Whether its box is ticked; no box where absent'),
  oneOf: z.array(sentenceOut).optional().describe('Ways of which one is taken'),
})

/** The card as answers show it. */
export const cardOut = z.strictObject({
  title: z.string().describe('Name of the order'),
  machine: z.string().describe('Machine, serial number, hours, date'),
  about: z.array(sentenceOut).describe('Refrigerant, oil, drive, place, person, job'),
  stops: z.array(sentenceOut).describe('What is forbidden or dangerous: read first'),
  dangers: z.array(z.string()).describe('What can hurt somebody in this job, a line each'),
  steps: z
    .array(
      z.strictObject({
        id: z.enum(CARD_STEP_IDS).describe('Name of the step'),
        title: z.string().describe('Its title'),
        asks: z.boolean().describe('Whether it asks for figures'),
        done: z
          .boolean()
          .describe('Whether they are written down, and nothing speaks against them'),
        lines: z.array(lineOut).describe('Tasks and figures in their order; one when it is done'),
      }),
    )
    .describe('The steps of the visit that this job has'),
  records: z.array(lineOut).describe('What is written down in the end'),
  foot: z.string().describe('Which program and which data it was made by'),
})

/** A line of the card: something to do with a box before it, or a figure and what it means. */
export interface Line {
  readonly text: Sentence
  /** Whether its box is ticked; undefined where there is none, since it is no task. */
  readonly ticked?: boolean | undefined
  /** Ways of which one is taken: no boxes, since they are not all to be done. */
  readonly oneOf?: readonly Sentence[] | undefined
}

export interface CardStep {
  readonly id: CardStepId
  readonly title: string
  readonly asks: boolean
  readonly done: boolean
  readonly lines: readonly Line[]
}

export interface Card {
  readonly title: string
  readonly machine: string
  readonly about: readonly Sentence[]
  readonly stops: readonly Sentence[]
  readonly dangers: readonly string[]
  readonly steps: readonly CardStep[]
  readonly records: readonly Line[]
  readonly foot: string
}
