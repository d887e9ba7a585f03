import { FEATURES, type Observation } from './features.ts'
import { fitOf } from './gaussian.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'
import type { Posterior } from './posterior.ts'

/** Causes that the readings at hand cannot tell apart, taken together. */
export interface Class {
  readonly causes: readonly Cause[]
  readonly probability: number
}

/** Below this many standard deviations two causes look alike. */
export const APART = 2
/** A cause less likely than this is not kept in any class of others. */
const NEGLIGIBLE = 0.02
/** Hypotheses that carry less than this share of their cause do not speak for it. */
const MINOR = 0.1

/**
 * Merge the causes that the observed features cannot part: where some likely severity of the one
 * shows what some likely severity of the other shows, to within APART. Merged before they are
 * ranked, so that no cause is named alone that others could pose as.
 */
export function classes(
  all: readonly Hypothesis[],
  observations: readonly Observation[],
  { causes, weights }: Posterior,
): readonly Class[] {
  const likely = causes.filter(({ probability }) => probability >= NEGLIGIBLE)
  const parent = new Map(likely.map(({ cause }) => [cause, cause]))
  const root = (cause: Cause): Cause => {
    const up = parent.get(cause) ?? cause
    return up === cause ? cause : root(up)
  }
  const speaking = (cause: Cause, probability: number) =>
    all.filter(
      (hypothesis, i) => hypothesis.cause === cause && (weights[i] as number) > MINOR * probability,
    )
  likely.forEach((a, i) => {
    for (const b of likely.slice(i + 1)) {
      if (a.cause === 'reading-or-test-wrong' || b.cause === 'reading-or-test-wrong') continue
      const alike = speaking(a.cause, a.probability).some((one) =>
        speaking(b.cause, b.probability).some(
          (other) => distance(one, other, observations) < APART,
        ),
      )
      if (alike) parent.set(root(b.cause), root(a.cause))
    }
  })
  const groups = new Map<Cause, Cause[]>()
  for (const { cause } of likely)
    groups.set(root(cause), [...(groups.get(root(cause)) ?? []), cause])
  const probabilityOf = (cause: Cause) =>
    causes.find((each) => each.cause === cause)?.probability ?? 0
  return [...groups.values()]
    .map((group) => ({
      causes: group,
      probability: group.reduce((sum, cause) => sum + probabilityOf(cause), 0),
    }))
    .sort((a, b) => b.probability - a.probability)
}

/** Standard deviations between what two hypotheses show in the observed features. */
export function distance(
  one: Hypothesis,
  other: Hypothesis,
  observations: readonly Observation[],
): number {
  if (observations.length === 0) return 0
  const shown = observations.map((observation) => ({
    ...observation,
    value: other.mean[FEATURES.indexOf(observation.feature)] as number,
  }))
  return Math.sqrt(fitOf(one, shown).distance)
}
