import data from '../../data/service/lesson.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { defineOperation } from '../operation.ts'
import { sourceTable } from '../source-table.ts'
import { caseOf, type LessonCase } from './lesson/draw.ts'
import { endingOf } from './lesson/ending.ts'
import { type LessonInput, lessonFields } from './lesson/fields.ts'
import { observationsOf, totalCost, workedOut } from './lesson/market.ts'
import { lessonOut, type STAGES } from './lesson/result.ts'
import { gradedOf, nameable } from './lesson/reveal.ts'
import { offersOf, seenOf, supposedIn } from './lesson/scene.ts'
import { blankSheet } from './lesson/sheet.ts'
import { buyTold, predictTold, revealTold } from './lesson/told.ts'
import { type Named, TEXTS } from './lesson/topics.ts'
import { propertySources } from './property-sources.ts'
import { conditionsShown, machineShown } from './simulate/outcome.ts'
import { modelSources } from './simulate/sources.ts'
import { TEXTS as SIMULATED } from './simulate/texts.ts'

/** What to know at each stage. */
const WARNINGS = {
  predict: ['invented-machine'],
  buy: ['invented-machine', 'spread'],
  revealed: ['invented-machine'],
} as const

const SAID = { ...SIMULATED.warnings, ...TEXTS.warnings }

const sourceOf = sourceTable(data.sources)

/** A case to be solved: predict, buy readings, name the cause, see why it is no other. Keeps no state. */
export const lesson = defineOperation({
  name: 'lesson',
  summary: 'A blind case on an invented machine: predict, buy readings, name the cause, see why',
  description:
    'For a class or for oneself. Each case speaks against one of nine sayings of the trade. First predict which way the readings move, then buy readings one at a time for their minutes, then name the cause; it is revealed with what every other cause would have shown, the reading that parts them, the fault over its range, the machine beside itself when sound, and an answer sheet to print. The same seed is the same case for everybody. Nothing is kept: each request brings what was said so far.',
  fields: lessonFields,
  check: requireOrder,
  result: lessonOut,
  cautions: { always: ['weigh-the-charge', 'maker-first'], mayAlso: [] },
  example: { seed: 7, topic: 'high-head' },
  *inPieces(input) {
    const case_ = caseOf(input.seed, input.topic, input.knowledge)
    const { named, suspected, bought, predictions } = input
    for (const field of ['suspected', 'named'] as const) requireNameable(case_, input[field], field)
    const stage: (typeof STAGES)[number] =
      predictions === undefined ? 'predict' : named === undefined ? 'buy' : 'revealed'
    const observations = observationsOf(case_, bought)
    const spent = totalCost(bought)
    const supposed = supposedIn(case_)
    const seen = seenOf(case_)
    const known = { case_, seen, supposed, spent, ...workedOut(observations, case_) }
    const end =
      named === undefined || predictions === undefined
        ? undefined
        : yield* endingOf(case_, bought, named, gradedOf(case_, predictions))
    const { machine, topic } = case_
    return {
      result: {
        stage,
        seed: case_.seed,
        topic: topic.id,
        claim: topic.claim,
        knowledge: case_.knowledge,
        machine: machineShown(case_.modelMachine, case_.name, case_.architecture, machine),
        conditions: conditionsShown(case_.conditions),
        seen,
        supposed: {
          cause: topic.supposed.fault,
          setting: supposed?.setting,
          size: supposed?.size,
        },
        suspected,
        choices: nameable(case_),
        offers: offersOf(case_, bought),
        superheat: known.superheat,
        subcooling: known.subcooling,
        spent,
        sheet: end?.sheet ?? blankSheet(case_),
        reveal: end?.shown,
      },
      told:
        end && named !== undefined
          ? revealTold(known, end.reveal, named, end.graded, end)
          : stage === 'buy'
            ? buyTold(known)
            : predictTold(known),
      steps: [],
      cautions: [],
      sources: [
        sourceOf(topic.source),
        sourceOf('lesson-steps'),
        ...modelSources(),
        ...propertySources(pickRefrigerant(machine.refrigerant)),
      ],
      assumptions: [],
      warnings: WARNINGS[stage].map((code) => ({ code, message: SAID[code] })),
    }
  },
})

/** @throws {CalcError} for a reading before the predictions, a cause before them, or a reading bought twice. */
function requireOrder({ predictions, bought, named }: LessonInput): void {
  if (predictions === undefined && (bought.length > 0 || named !== undefined)) {
    throw new CalcError('missing-input', 'First say which way each reading would move.', {
      path: ['predictions'],
      hint: 'Up, same or down for each of the five.',
    })
  }
  const twice = bought.findIndex((offer, index) => bought.indexOf(offer) !== index)
  if (twice < 0) return
  throw new CalcError('bad-input', `The reading "${bought[twice]}" is bought already.`, {
    path: ['bought', twice],
    hint: 'It would read the same again.',
  })
}

function requireNameable(case_: LessonCase, named: Named | undefined, field: string): void {
  const choices = nameable(case_)
  if (named === undefined || choices.includes(named)) return
  throw new CalcError('refused', `This machine cannot have the fault "${named}".`, {
    path: [field],
    hint: `It can have: ${choices.join(', ')}.`,
  })
}
