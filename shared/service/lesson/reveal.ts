import {
  type Case,
  faultOf,
  faultsOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  type Outcome,
  run,
  stateOf,
} from '../../cycle/index.ts'
import {
  type Cause,
  type Class,
  classes,
  entropyBits,
  FEATURES,
  featuresOf,
  type Hypothesis,
  hypothesesInPieces,
  type Observation,
  type Posterior,
  posterior,
  USUAL_PRIORS,
  worthReading,
} from '../../diagnosis/index.ts'
import { covarianceOf } from '../../diagnosis/spread.ts'
import type { InPieces } from '../../pieces.ts'
import { type LessonCase, soundOf } from './draw.ts'
import { GAUGES, type Gauge, type Move, type Moves, movesOf } from './gauges.ts'
import { costOf, OFFER_IDS, type Offer, observationsOf, offerOf } from './market.ts'
import type { Named } from './topics.ts'

/** How a cause that was named stands against the one that it is. */
export type Verdict = 'right' | 'same-class' | 'wrong'

/** Why it is not another cause. */
export interface Other {
  readonly cause: Cause
  /** After what was bought. */
  readonly probability: number
  /** Which way it would have moved each gauge from the sound machine. */
  readonly moves: Moves
  /** The reading that parts it best from what it is; nothing where none does. */
  readonly parting?: {
    readonly offer: Offer
    readonly would: number
    readonly shows: number
    /** Standard deviations between the two. */
    readonly apart: number
  }
}

export interface Reveal {
  readonly verdict: Verdict
  /** What the readings that were bought leave, likeliest first, up to nine in ten. */
  readonly left: readonly Class[]
  /** What all readings would have left. */
  readonly leftByAll: readonly Class[]
  readonly others: readonly Other[]
  /** Bit that the readings brought over the causes. */
  readonly bits: number
  /** What to buy first, best first. */
  readonly best: readonly Offer[]
}

/** Share of the probability that a set of causes must reach to be the answer. */
const ENOUGH = 0.9
/** Causes nearer than this many standard deviations in every reading cannot be told apart. */
const APART = 2
/** From this many on the cheapest reading does. */
const CLEAR = 3
const MOST_BEST = 3

/**
 * What the case was, and what each other cause would have shown instead.
 *
 * @param sound - How the same machine ends up without its fault.
 */
export function* revealOf(
  case_: LessonCase,
  bought: readonly Offer[],
  named: Named,
  sound: Outcome,
): InPieces<Reveal> {
  const { machine, conditions, knowledge } = case_
  const all = yield* hypothesesInPieces(machine, conditions, knowledge, soundOf(case_))
  yield
  const observations = observationsOf(case_, bought)
  const everything = observationsOf(case_, OFFER_IDS)
  const before = posterior(all, [], USUAL_PRIORS)
  const now = posterior(all, observations, USUAL_PRIORS)
  const byAll = posterior(all, everything, USUAL_PRIORS)
  const left = causesLeft(all, observations, now)
  return {
    verdict: verdictOf(case_.cause, named, left),
    left,
    leftByAll: causesLeft(all, everything, byAll),
    others: othersOf(case_, sound, all, now, byAll, everything),
    bits: openIn(before) - openIn(now),
    best: bestFirst(all),
  }
}

/** What to buy first, by every second severity of each cause: more of them say the same. */
function bestFirst(all: readonly Hypothesis[]): readonly Offer[] {
  const met = new Map<Cause, number>()
  const few = all.filter(({ cause }) => {
    const count = met.get(cause) ?? 0
    met.set(cause, count + 1)
    return count % 2 === 0
  })
  return worthReading(few, [], posterior(few, [], USUAL_PRIORS))
    .slice(0, MOST_BEST)
    .map(({ feature }) => offerOf(feature))
}

const openIn = ({ causes }: Posterior) => entropyBits(causes.map(({ probability }) => probability))

/** What readings leave: classes of like causes up to where they hold nine tenths of the probability. */
export function causesLeft(
  all: readonly Hypothesis[],
  observations: readonly Observation[],
  weighed: Posterior = posterior(all, observations, USUAL_PRIORS),
): readonly Class[] {
  let held = 0
  return classes(all, observations, weighed).filter(({ probability }) => {
    const open = held < ENOUGH
    held += probability
    return open
  })
}

function verdictOf(cause: Named, named: Named, left: readonly Class[]): Verdict {
  if (named === cause) return 'right'
  const together = left.some(({ causes }) => causes.includes(cause) && causes.includes(named))
  return together ? 'same-class' : 'wrong'
}

function othersOf(
  { machine, outcome, cause }: LessonCase,
  soundOutcome: Outcome,
  all: readonly Hypothesis[],
  now: Posterior,
  byAll: Posterior,
  everything: readonly Observation[],
): readonly Other[] {
  const state = stateOf(outcome)
  const sound = stateOf(soundOutcome)
  if (state === undefined || sound === undefined) return []
  const [shows, whole] = [featuresOf(state), featuresOf(sound)]
  return now.causes
    .filter((each) => each.cause !== cause && each.cause !== 'reading-or-test-wrong')
    .map(({ cause: other, probability }): Other => {
      const likeliest = bestOf(other, all, byAll)
      const moves = movesOf(whole, likeliest.mean, machine)
      const parting = partingOf(likeliest, shows, everything)
      return {
        cause: other,
        probability,
        moves,
        ...(parting.apart < APART ? {} : { parting }),
      }
    })
}

/** A cause at the severity that fits best: where even that does not, it is ruled out. */
function bestOf(cause: Cause, all: readonly Hypothesis[], { weights }: Posterior): Hypothesis {
  let best: readonly [Hypothesis, number] | undefined
  all.forEach((hypothesis, i) => {
    if (hypothesis.cause !== cause) return
    const weight = weights[i] as number
    if (best === undefined || weight > best[1]) best = [hypothesis, weight]
  })
  return (best as readonly [Hypothesis, number])[0]
}

/** The cheapest reading that parts another cause clearly, else the one that parts it best. */
function partingOf(other: Hypothesis, shows: Float64Array, everything: readonly Observation[]) {
  const each = everything.map(({ feature, sigma }) => {
    const i = FEATURES.indexOf(feature)
    const spread = Math.sqrt(covarianceOf(other.spread, i, i) + sigma * sigma)
    const [would, here] = [other.mean[i] as number, shows[i] as number]
    return { offer: offerOf(feature), would, shows: here, apart: Math.abs(would - here) / spread }
  })
  const minutes = ({ offer }: (typeof each)[number]) => costOf(offer).si
  const clear = each.filter(({ apart }) => apart >= CLEAR)
  return clear.length > 0
    ? clear.reduce((a, b) => (minutes(b) < minutes(a) ? b : a))
    : each.reduce((a, b) => (b.apart > a.apart ? b : a))
}

/** A prediction beside what the supposed fault does. */
export interface Graded {
  readonly gauge: Gauge
  readonly predicted: Move
  readonly expected: Move
}

/** The moves of the supposed fault, from the sound machine in the weather before. */
export function expectedOf(case_: LessonCase): Moves {
  const { machine, conditions, before, topic } = case_
  const { fault, severity = 0 } = topic.supposed
  const sound: Case = { machine, conditions, faults: NO_FAULTS, deviations: NO_DEVIATIONS }
  const whole = before === conditions ? soundOf(case_) : run({ ...sound, conditions: before })
  const supposed =
    fault === 'none' ? soundOf(case_) : run({ ...sound, faults: faultOf(machine, fault, severity) })
  const [from, to] = [whole, supposed].map(stateOf)
  if (from === undefined || to === undefined) throw new Error(`${topic.id} has no state`)
  return movesOf(featuresOf(from), featuresOf(to), machine)
}

export function gradedOf(case_: LessonCase, predictions: Moves): readonly Graded[] {
  const expected = expectedOf(case_)
  return GAUGES.map((gauge) => ({
    gauge,
    predicted: predictions[gauge],
    expected: expected[gauge],
  }))
}

/** What can be named of a machine. */
export const nameable = ({ machine }: LessonCase): readonly Named[] => [
  'none',
  ...faultsOf(machine),
]
