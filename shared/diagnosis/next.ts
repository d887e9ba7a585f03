import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import { entropyBits } from './entropy.ts'
import { FEATURES, type Feature, type Observation } from './features.ts'
import { fitOf, forward } from './gaussian.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'
import type { Posterior } from './posterior.ts'

/** Something that could be read next: how well, and what it costs in minutes. */
export interface Candidate {
  readonly feature: Feature
  readonly sigma: number
  readonly minutes: number
}

/** What a next reading is worth. */
export interface Worth extends Candidate {
  /** Expected drop of the entropy over causes, bit. */
  readonly gain: number
  /** Bit a minute: the order of the answer. */
  readonly perMinute: number
}

/** Usual instruments, with minutes from memory: see data/service/diagnosis.json. */
export const USUAL_CANDIDATES = figures.candidates.rows as readonly Candidate[]

/** Points of the rule over what a reading may turn out to be, for each hypothesis: ±2.33 σ in nine. */
const POINTS = [-2.33, -1.64, -1.05, -0.52, 0, 0.52, 1.05, 1.64, 2.33]
const POINT_WEIGHTS = POINTS.map((z) => Math.exp(-0.5 * z * z))
const POINT_TOTAL = POINT_WEIGHTS.reduce((a, b) => a + b, 0)
/** Hypotheses less likely than this share of the likeliest are left out of the sum. */
const NEGLIGIBLE = 1e-3

/**
 * What to read next, best first: the drop of entropy over causes that a reading is expected to
 * bring, for each minute. What a hypothesis expects of it follows from its spread given what was
 * read already: a reading that only repeats another brings nothing.
 */
export function worthReading(
  all: readonly Hypothesis[],
  observations: readonly Observation[],
  { weights }: Posterior,
  candidates: readonly Candidate[] = USUAL_CANDIDATES,
): readonly Worth[] {
  const read = new Set(observations.map(({ feature }) => feature))
  const most = weights.reduce((a, b) => Math.max(a, b), 0)
  const kept = all.flatMap((hypothesis, i) =>
    (weights[i] as number) > NEGLIGIBLE * most
      ? [{ hypothesis, weight: weights[i] as number }]
      : [],
  )
  const fits = kept.map(({ hypothesis }) =>
    observations.length === 0 ? undefined : fitOf(hypothesis, observations),
  )
  const before = entropyByCause(kept.map(({ hypothesis, weight }) => [hypothesis.cause, weight]))
  return candidates
    .filter(({ feature }) => !read.has(feature))
    .map((candidate): Worth => {
      const expected = kept.map(({ hypothesis }, i) =>
        given(hypothesis, observations, fits[i], candidate),
      )
      let after = 0
      kept.forEach(({ weight }, i) => {
        const { mean, sigma } = expected[i] as Expected
        POINTS.forEach((z, k) => {
          const value = mean + z * sigma
          const updated = kept.map(({ hypothesis, weight: prior }, j): [Cause, number] => {
            const other = expected[j] as Expected
            const away = (value - other.mean) / other.sigma
            return [hypothesis.cause, (prior * Math.exp(-0.5 * away * away)) / other.sigma]
          })
          after += (weight * (POINT_WEIGHTS[k] as number) * entropyByCause(updated)) / POINT_TOTAL
        })
      })
      const total = kept.reduce((sum, { weight }) => sum + weight, 0)
      const gain = Math.max(0, before - after / total)
      return { ...candidate, gain, perMinute: gain / candidate.minutes }
    })
    .sort((a, b) => b.perMinute - a.perMinute)
}

interface Expected {
  readonly mean: number
  readonly sigma: number
}

/** Mean and spread of a feature under a hypothesis, given what was read already. */
function given(
  hypothesis: Hypothesis,
  observations: readonly Observation[],
  fit: ReturnType<typeof fitOf> | undefined,
  { feature, sigma }: Candidate,
): Expected {
  const n = FEATURES.length
  const own = FEATURES.indexOf(feature)
  const variance = hypothesis.covariance[own * n + own] as number
  const plain = hypothesis.mean[own] as number
  if (fit === undefined) return { mean: plain, sigma: Math.sqrt(variance + sigma * sigma) }
  const across = Float64Array.from(
    observations,
    (each) => hypothesis.covariance[own * n + FEATURES.indexOf(each.feature)] as number,
  )
  const mean = plain + across.reduce((sum, c, i) => sum + c * (fit.solved[i] as number), 0)
  const explained = forward(fit.factor, across).reduce((sum, v) => sum + v * v, 0)
  return { mean, sigma: Math.sqrt(Math.max(0, variance - explained) + sigma * sigma) }
}

/** Bit, over causes; weights need not add up to 1. */
function entropyByCause(weights: readonly (readonly [Cause, number])[]): number {
  const sums = new Map<Cause, number>()
  let total = 0
  for (const [cause, weight] of weights) {
    sums.set(cause, (sums.get(cause) ?? 0) + weight)
    total += weight
  }
  return entropyBits(sums.values(), total)
}
