import * as z from 'zod'
import { choiceIn } from '../../fields/index.ts'
import { type GAUGES, MOVES } from './gauges.ts'
import { OFFER_IDS } from './market.ts'
import { NAMED, TOPIC_IDS } from './topics.ts'

const moveIn = choiceIn(MOVES, {
  higher: 'up',
  rises: 'up',
  '+': 'up',
  unchanged: 'same',
  '0': 'same',
  lower: 'down',
  falls: 'down',
  '-': 'down',
})

export const lessonFields = {
  seed: z
    .int()
    .min(0)
    .max(2 ** 31 - 1)
    .describe('Number of the case: the same one gives the same case to everybody'),
  topic: choiceIn(TOPIC_IDS)
    .optional()
    .describe('The saying that the case speaks against; without it the seed picks one'),
  knowledge: choiceIn(['known', 'roughly'], { unknown: 'roughly' })
    .default('known')
    .describe(
      'How well the machine is known: known (its readings when sound are there) or roughly (one of its kind)',
    ),
  predictions: z
    .strictObject({
      lowSide: moveIn.describe('Low-side pressure'),
      highSide: moveIn.describe('High-side pressure'),
      superheat: moveIn.describe('Superheat'),
      subcooling: moveIn.describe('Subcooling'),
      vent: moveIn.describe('Vent temperature'),
    } satisfies Record<(typeof GAUGES)[number], z.ZodType>)
    .optional()
    .describe('Which way each reading moves if it is what the saying supposes: up, same or down'),
  suspected: choiceIn(NAMED, { sound: 'none' })
    .optional()
    .describe('The cause that is suspected before any reading; it ends nothing'),
  bought: z
    .array(choiceIn(OFFER_IDS))
    .max(OFFER_IDS.length)
    .default([])
    .describe('Readings bought so far, in their order'),
  named: choiceIn(NAMED, { sound: 'none' })
    .optional()
    .describe('The cause that is named; then the case is revealed'),
}

export type LessonInput = z.output<z.ZodObject<typeof lessonFields>>
