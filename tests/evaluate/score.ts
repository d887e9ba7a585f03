import type { Cause } from '../../shared/diagnosis/hypotheses.ts'
import { holding } from '../../shared/service/diagnose/verdict/verdict.ts'
import type { Result } from './ask.ts'
import type { Truth } from './plant.ts'

/** Outcomes of Yuill and Braun (iracc/1307), with "cannot tell" apart. */
export const OUTCOMES = [
  'correct',
  'cannot-tell',
  'no-response',
  'false-alarm',
  'missed-detection',
  'misdiagnosis',
] as const
export type Outcome = (typeof OUTCOMES)[number]

/** One answer against what was really there. */
export interface Score {
  readonly outcome: Outcome
  readonly top1: boolean
  readonly top2: boolean
  /** Whether the fewest causes that hold nine tenths have the truth in them, and how many they are. */
  readonly covered: boolean
  readonly setSize: number
  /** Whether the truth is among the named, and how many are named. */
  readonly inNamed: boolean
  readonly namedSize: number
  /** Share of the first cause, for its calibration; and of the true one. */
  readonly confidence: number
  readonly shareOfTruth: number
  readonly brier: number
  /** Points to a low charge alone, though the charge is not low. */
  readonly harm: boolean
}

/** Capacity lost below which a fault may be called none. */
const LOW_CHARGE_BELOW = 0.97

export function scoreOf(truth: Truth, result: Result | undefined): Score {
  const causes = result?.causes ?? []
  const shareOf = (cause: Cause) => causes.find((each) => each.cause === cause)?.share ?? 0
  const order = causes.map(({ cause }) => cause)
  const set = holding(
    causes.map(({ cause, share }) => ({ cause, probability: share })),
    0.9,
  )
  const named = result?.named ?? []
  return {
    outcome: outcomeOf(truth.cause, result),
    top1: (order[0] ?? named[0]) === truth.cause,
    top2:
      order.slice(0, 2).includes(truth.cause) || (order.length === 0 && named[0] === truth.cause),
    covered:
      set.some(({ cause }) => cause === truth.cause) ||
      (causes.length === 0 && named.includes(truth.cause)),
    setSize: Math.max(1, set.length),
    inNamed: named.includes(truth.cause),
    namedSize: named.length,
    confidence: causes[0]?.share ?? 1,
    shareOfTruth: causes.length === 0 && named.includes(truth.cause) ? 1 : shareOf(truth.cause),
    brier: brierOf(causes, truth.cause),
    harm:
      result?.verdict === 'fault' &&
      named.length === 1 &&
      named[0] === 'undercharge' &&
      truth.charge > LOW_CHARGE_BELOW,
  }
}

const brierOf = (causes: Result['causes'], truth: Cause) =>
  causes.reduce((sum, { cause, share }) => sum + (share - (cause === truth ? 1 : 0)) ** 2, 0)

function outcomeOf(truth: Cause, result: Result | undefined): Outcome {
  if (result === undefined) return 'no-response'
  const { verdict, named } = result
  if (verdict === 'cannot-tell') return 'cannot-tell'
  if ((named as readonly Cause[]).includes(truth)) return 'correct'
  if (truth === 'none') return verdict === 'fault' ? 'false-alarm' : 'no-response'
  if (verdict === 'no-fault-shown') return 'missed-detection'
  return verdict === 'reading-or-test-wrong' ? 'no-response' : 'misdiagnosis'
}
