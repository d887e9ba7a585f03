import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Observation } from './features.ts'
import { fitOf } from './gaussian.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'

/** How likely causes are before anything is read; they need not add up to 1. */
export type Priors = Readonly<Partial<Record<Cause, number>>>

/** Those of the trade, from memory: see data/service/diagnosis.json. */
export const USUAL_PRIORS: Priors = (({ source: _, ...rest }) => rest)(figures.priors)

/** A cause with how likely it is now. */
export interface Ranked {
  readonly cause: Cause
  readonly probability: number
  /** Mean severity where this is the cause. */
  readonly severity: number
}

export interface Posterior {
  /** Most likely first; together 1. */
  readonly causes: readonly Ranked[]
  /** Weight of each hypothesis, in the order given; together 1. */
  readonly weights: Float64Array
}

/**
 * Causes after some observations: prior × likelihood, every severity of a cause being as likely as
 * the next. Without observations the priors come back. Priors left out stand for equal ones.
 */
export function posterior(
  all: readonly Hypothesis[],
  observations: readonly Observation[],
  priors?: Priors,
): Posterior {
  const counts = new Map<Cause, number>()
  for (const { cause } of all) counts.set(cause, (counts.get(cause) ?? 0) + 1)
  const logPriors = all.map(({ cause }) =>
    Math.log((priors === undefined ? 1 : (priors[cause] ?? 0)) / (counts.get(cause) ?? 1)),
  )
  return weighed(all, observations, logPriors)
}

/** As {@link posterior}, with ln of how likely each hypothesis is before; they need not add up to 1. */
export function weighed(
  all: readonly Hypothesis[],
  observations: readonly Observation[],
  logPriors: readonly number[],
): Posterior {
  const logs = all.map(
    (hypothesis, i) =>
      (logPriors[i] as number) +
      (observations.length === 0 ? 0 : fitOf(hypothesis, observations).logLikelihood),
  )
  const most = Math.max(...logs)
  const raw = Float64Array.from(logs, (value) => Math.exp(value - most))
  const total = raw.reduce((a, b) => a + b, 0)
  const weights = raw.map((value) => value / total)
  const sums = new Map<Cause, { probability: number; severity: number }>()
  all.forEach(({ cause, severity }, i) => {
    const sum = sums.get(cause) ?? { probability: 0, severity: 0 }
    sum.probability += weights[i] as number
    sum.severity += (weights[i] as number) * severity
    sums.set(cause, sum)
  })
  const causes = [...sums].map(
    ([cause, { probability, severity }]): Ranked => ({
      cause,
      probability,
      severity: probability > 0 ? severity / probability : 0,
    }),
  )
  return { causes: causes.sort((a, b) => b.probability - a.probability), weights }
}

/** A probability as it is shown: it is not known better than to a thousandth. */
export const toThousandths = (share: number): number => Number(Math.min(1, share).toFixed(3))
