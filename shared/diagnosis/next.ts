import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import { entropyBits } from './entropy.ts'
import { FEATURES, type Feature, type Observation } from './features.ts'
import { fitOf, forward } from './gaussian.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'
import type { Posterior } from './posterior.ts'
import { covarianceOf } from './spread.ts'

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
/** Standard deviations beyond which a likelihood is nothing beside the likeliest’s: e⁻²⁵. */
const NOTHING = 7

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
  const before = entropyBits(sumsOf(kept).values(), totalOf(kept))
  const causes = [...new Set(kept.map(({ hypothesis }) => hypothesis.cause))]
  const causeOf = Uint8Array.from(kept, ({ hypothesis }) => causes.indexOf(hypothesis.cause))
  return candidates
    .filter(({ feature }) => !read.has(feature))
    .map((candidate): Worth => {
      const expected = kept.map(({ hypothesis }, i) =>
        given(hypothesis, observations, fits[i], candidate),
      )
      const means = Float64Array.from(expected, ({ mean }) => mean)
      const sigmas = Float64Array.from(expected, ({ sigma }) => sigma)
      const sums = new Float64Array(causes.length)
      let after = 0
      for (let i = 0; i < kept.length; i += 1) {
        const { weight } = kept[i] as (typeof kept)[number]
        for (let k = 0; k < POINTS.length; k += 1) {
          const value = (means[i] as number) + (POINTS[k] as number) * (sigmas[i] as number)
          sums.fill(0)
          let total = 0
          for (let j = 0; j < kept.length; j += 1) {
            const sigma = sigmas[j] as number
            const away = (value - (means[j] as number)) / sigma
            // what lies so far off adds nothing to the last digit of what is near
            if (away > NOTHING || away < -NOTHING) continue
            const prior = (kept[j] as (typeof kept)[number]).weight
            const share = (prior * Math.exp(-0.5 * away * away)) / sigma
            const cause = causeOf[j] as number
            sums[cause] = (sums[cause] as number) + share
            total += share
          }
          after += (weight * (POINT_WEIGHTS[k] as number) * entropyBits(sums, total)) / POINT_TOTAL
        }
      }
      const gain = Math.max(0, before - after / totalOf(kept))
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
  const own = FEATURES.indexOf(feature)
  const variance = covarianceOf(hypothesis.spread, own, own)
  const plain = hypothesis.mean[own] as number
  if (fit === undefined) return { mean: plain, sigma: Math.sqrt(variance + sigma * sigma) }
  const across = new Float64Array(observations.length)
  let mean = plain
  observations.forEach((each, i) => {
    const both = covarianceOf(hypothesis.spread, own, FEATURES.indexOf(each.feature))
    across[i] = both
    mean += both * (fit.solved[i] as number)
  })
  const explained = forward(fit.factor, across).reduce((sum, v) => sum + v * v, 0)
  return { mean, sigma: Math.sqrt(Math.max(0, variance - explained) + sigma * sigma) }
}

interface Kept {
  readonly hypothesis: Hypothesis
  readonly weight: number
}

const totalOf = (kept: readonly Kept[]) => kept.reduce((sum, { weight }) => sum + weight, 0)

function sumsOf(kept: readonly Kept[]): ReadonlyMap<Cause, number> {
  const sums = new Map<Cause, number>()
  for (const { hypothesis, weight } of kept) {
    sums.set(hypothesis.cause, (sums.get(hypothesis.cause) ?? 0) + weight)
  }
  return sums
}
