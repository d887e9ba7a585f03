import * as z from 'zod'
import { sentenceOut } from '../../answer/sentence.ts'
import { quantityOut } from '../../quantity/index.ts'
import { SETTINGS } from '../simulate/fields.ts'
import {
  conditionsOut,
  machineOut,
  outcomeOut,
  partsOut,
  performanceOut,
  pointsOut,
  readingsOut,
  sweepOut,
} from '../simulate/result.ts'
import { GAUGES, MOVES } from './gauges.ts'
import { OFFER_IDS } from './market.ts'
import { NAMED, TOPIC_IDS } from './topics.ts'

export const STAGES = ['predict', 'buy', 'revealed'] as const

const moveOut = z.enum(MOVES)
const movesOut = z.strictObject({
  lowSide: moveOut,
  highSide: moveOut,
  superheat: moveOut,
  subcooling: moveOut,
  vent: moveOut,
})

const classesOut = z.array(
  z.strictObject({
    causes: z.array(z.enum([...NAMED, 'reading-or-test-wrong'])),
    probability: z.number().describe('0 to 1'),
  }),
)

/** What a simulation of the case takes: texts and numbers as `simulate` reads them. */
const simulationOut = z.strictObject({
  modelMachine: z.string(),
  refrigerant: z.string(),
  ambient: z.string(),
  returnAir: z.string(),
  relativeHumidity: z.string(),
  compressorRpm: z.number(),
  condenserFan: z.string(),
  blower: z.string(),
  barometer: z.string(),
  deviations: z.record(z.string(), z.string()).optional(),
  ...(Object.fromEntries(SETTINGS.map((name) => [name, z.string().optional()])) as Record<
    (typeof SETTINGS)[number],
    z.ZodOptional<z.ZodString>
  >),
})

export const revealOut = z.strictObject({
  cause: z.enum(NAMED),
  setting: z.enum(SETTINGS).optional().describe('The field of a simulation that gives its size'),
  size: quantityOut.optional(),
  verdict: z
    .enum(['right', 'same-class', 'wrong'])
    .describe('same-class: the readings that were bought cannot part it from the cause named'),
  predictions: z.array(
    z.strictObject({ gauge: z.enum(GAUGES), predicted: moveOut, expected: moveOut }),
  ),
  left: classesOut.describe('Causes that the readings bought leave, alike ones together'),
  leftByAll: classesOut.describe('Causes that all readings would have left'),
  bits: z.number().describe('Information over the causes that the readings brought, bit'),
  bitsPerMinute: z.number().optional(),
  best: z.array(z.enum(OFFER_IDS)).describe('What brings most for its minutes, to begin with'),
  others: z
    .array(
      z.strictObject({
        cause: z.enum(NAMED),
        probability: z.number().describe('0 to 1, after the readings bought'),
        moves: movesOut.describe('From the sound machine, at the severity that fits best'),
        reading: z.enum(OFFER_IDS).optional().describe('What parts it from the case; none does'),
        would: quantityOut.optional().describe('What that reading would have been'),
        shows: quantityOut.optional().describe('What it is, without the error of an instrument'),
        apart: z.number().optional().describe('Standard deviations between the two'),
      }),
    )
    .describe('Why not the others, likeliest first'),
  broken: z.string().describe('What speaks against the saying'),
  outcome: outcomeOut,
  readings: readingsOut,
  performance: performanceOut,
  points: pointsOut,
  parts: partsOut,
  sound: z.strictObject({ outcome: outcomeOut, points: pointsOut, parts: partsOut }),
  sweep: sweepOut,
  simulation: simulationOut.describe('The case as the input of `simulate`, to go on with'),
})

export const lessonOut = z.strictObject({
  stage: z.enum(STAGES).describe('What comes next: predictions, readings, or nothing more'),
  seed: z.number(),
  topic: z.enum(TOPIC_IDS),
  claim: z.string().describe('What is often said'),
  knowledge: z.enum(['known', 'roughly']),
  machine: machineOut,
  conditions: conditionsOut,
  seen: z.array(z.string()).describe('What is seen without an instrument'),
  supposed: z.strictObject({
    cause: z.enum(NAMED).describe('What the saying supposes; the case may be another'),
    setting: z.enum(SETTINGS).optional(),
    size: quantityOut.optional(),
  }),
  suspected: z.enum(NAMED).optional().describe('As it was suspected before any reading'),
  choices: z.array(z.enum(NAMED)).describe('What can be named'),
  offers: z.array(
    z.strictObject({
      reading: z.enum(OFFER_IDS),
      minutes: quantityOut,
      shows: quantityOut.optional().describe('Where it is bought, with the ± of its instrument'),
      sound: quantityOut.optional().describe('The same when sound, of a machine that is known'),
    }),
  ),
  superheat: quantityOut.optional().describe('As soon as what it needs is bought'),
  subcooling: quantityOut.optional().describe('As soon as what it needs is bought'),
  spent: quantityOut,
  sheet: z.array(sentenceOut).describe('To be printed for the class; with its answers at the end'),
  reveal: revealOut.optional(),
})
