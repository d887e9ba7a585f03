import type { FaultKind } from '../../../cycle/index.ts'
import { type Class, classes } from '../../../diagnosis/classes.ts'
import type { Observation } from '../../../diagnosis/features.ts'
import { fitOf } from '../../../diagnosis/gaussian.ts'
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import type { TestSizes } from '../../../diagnosis/latent.ts'
import type { Doubt } from '../../../diagnosis/mistakes.ts'
import { type Posterior, type Priors, type Ranked, weighed } from '../../../diagnosis/posterior.ts'
import { type Candidate, type Suspect, suspectsOf } from '../../../diagnosis/suspects.ts'
import { type Evidence, logEvidence } from './evidence.ts'

/** What the readings leave of the suspicion. */
export interface Inferred {
  readonly all: readonly Suspect[]
  readonly posterior: Posterior
  readonly classes: readonly Class[]
  /** How likely each cause was before. */
  readonly priors: ReadonlyMap<Cause, number>
  /** How far the readings lie from what the likeliest fault shows, σ for each of them: far above 1, the model shows nothing like them. */
  readonly misfit: number
}

/** What is doubted where the readings or the test are wrong, the likeliest first, as shares of all. */
export function doubted({ all, posterior }: Inferred): readonly (readonly [Doubt, number])[] {
  const sums = new Map<Doubt, number>()
  all.forEach(({ doubts }, i) => {
    if (doubts === undefined) return
    sums.set(doubts, (sums.get(doubts) ?? 0) + (posterior.weights[i] as number))
  })
  return [...sums].sort(([, a], [, b]) => b - a)
}

/** What counts besides the readings. */
export interface Grounds {
  readonly sizes: TestSizes
  readonly doubts: readonly Doubt[]
  /** Left out for equal ones. */
  readonly priors: Priors | undefined
  readonly evidence: Evidence
}

/**
 * Causes that act alike, of which one is not left out while another is solved: what a valve stuck
 * half open does turns round with the weather.
 */
const ALIKE: readonly (readonly FaultKind[])[] = [
  ['undercharge', 'restriction', 'valve-stuck-closed', 'valve-stuck-open'],
  ['overcharge', 'air', 'condenser-air'],
  ['compressor-leak', 'valve-stuck-open', 'stroke-stuck-low'],
]

/** A cause less likely than this by the effects carried over is not solved in the test's own weather. */
const WORTH_SOLVING = 5e-4
/** Most causes that are solved: what bounds the work of a diagnosis. */
const MOST_SOLVED = 8

/** How candidates are made, the coarse ones first. */
export interface Ways {
  /** From the effects carried over, or with some causes solved in the weather of the test. */
  candidates(how: 'carried' | readonly FaultKind[]): readonly Candidate[]
  /** The same with the spread of some faults taken where they stand; left out where it is not known so well. */
  readonly spread?:
    | ((
        candidates: readonly Candidate[],
        severities: ReadonlyMap<FaultKind, number>,
      ) => readonly Candidate[])
    | undefined
}

/**
 * Weighs every cause by effects carried over from the nominal weather; where the kind of the machine
 * is known, again with those causes solved in the weather of the test that this leaves likely, and
 * once more with the spread of those that are likely then.
 */
export function inferInTurn(
  { candidates, spread }: Ways,
  several: boolean,
  observations: readonly Observation[],
  grounds: Grounds,
): Inferred | undefined {
  const first = infer(candidates('carried'), observations, grounds)
  if (first === undefined || several) return first
  const solved = candidates(worthSolving(first.posterior.causes))
  const second = infer(solved, observations, grounds)
  if (second === undefined || spread === undefined) return second
  return infer(spread(solved, standing(second)), observations, grounds)
}

/** Most faults whose spread is taken where they stand, and how likely they must be. */
const MOST_STANDING = 4
const WORTH_STANDING = 0.01
/** Causes of one part stuck one way or the other, which begin at the same. */
const STUCK: readonly (readonly [FaultKind, FaultKind])[] = [
  ['valve-stuck-open', 'valve-stuck-closed'],
  ['stroke-stuck-high', 'stroke-stuck-low'],
]
/** Severity up to which a part stuck one way may as well be stuck a little the other way. */
const LITTLE = 0.2

/** The likely faults, each at the severity that fits best. */
function standing({ all, posterior }: Inferred): ReadonlyMap<FaultKind, number> {
  const found = new Map<FaultKind, number>()
  for (const { cause, probability } of posterior.causes) {
    if (found.size >= MOST_STANDING || probability < WORTH_STANDING) break
    if (cause === 'none' || cause === 'reading-or-test-wrong') continue
    const severity = likeliestSeverity(all, posterior, cause)
    found.set(cause, severity)
    const pair = STUCK.find((each) => each.includes(cause))
    const other = pair?.find((each) => each !== cause)
    if (other !== undefined && severity < LITTLE && !found.has(other)) found.set(other, 0)
  }
  return found
}

function likeliestSeverity(
  all: readonly Suspect[],
  { weights }: Posterior,
  cause: FaultKind,
): number {
  let [best, most] = [0, -1]
  all.forEach((each, i) => {
    if (each.cause !== cause || (weights[i] as number) <= most) return
    ;[best, most] = [each.severity, weights[i] as number]
  })
  return best
}

/** A cause counts at least so much of the likeliest that acts as it does. */
const OF_THE_LIKE = 0.05

/** Which causes to solve: the likely ones and those that act as they do, the likeliest, in all at most MOST_SOLVED. */
export function worthSolving(ranked: readonly Ranked[]): readonly FaultKind[] {
  const faults = ranked.flatMap(({ cause, probability }) =>
    cause === 'none' || cause === 'reading-or-test-wrong' ? [] : [{ cause, probability }],
  )
  const likeliestLike = (cause: FaultKind) =>
    faults
      .filter((one) => ALIKE.some((set) => set.includes(one.cause) && set.includes(cause)))
      .reduce((most, { probability }) => Math.max(most, probability), 0)
  return faults
    .map(({ cause, probability }) => {
      const like = likeliestLike(cause)
      const isWorth = Math.max(like, probability) >= WORTH_SOLVING
      return { cause, worth: isWorth ? Math.max(probability, OF_THE_LIKE * like) : 0 }
    })
    .filter(({ worth }) => worth > 0)
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST_SOLVED)
    .map(({ cause }) => cause)
}

/** Weighs every cause at every severity on every kind of machine that it may be. */
export function infer(
  candidates: readonly Candidate[],
  observations: readonly Observation[],
  { sizes, doubts, priors, evidence }: Grounds,
): Inferred | undefined {
  const all = candidates.flatMap((candidate) => suspectsOf(candidate, sizes, priors, doubts))
  if (all.length === 0) return undefined
  const posterior = weighed(
    all,
    observations,
    all.map((suspect) => suspect.logPrior + logEvidence(evidence, suspect)),
  )
  const before = new Map<Cause, number>()
  for (const { cause, logPrior } of all) {
    before.set(cause, (before.get(cause) ?? 0) + Math.exp(logPrior))
  }
  return {
    all,
    posterior,
    classes: classes(all, observations, posterior),
    priors: before,
    misfit: misfitOf(all, observations, posterior),
  }
}

function misfitOf(
  all: readonly Suspect[],
  observations: readonly Observation[],
  { weights }: Posterior,
): number {
  let likeliest: Suspect | undefined
  let most = -1
  all.forEach((suspect, i) => {
    if (suspect.doubts === undefined && (weights[i] as number) > most) {
      likeliest = suspect
      most = weights[i] as number
    }
  })
  return likeliest === undefined || observations.length === 0
    ? 0
    : Math.sqrt(fitOf(likeliest, observations).distance / observations.length)
}
