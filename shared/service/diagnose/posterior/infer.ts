import { type Class, classes } from '../../../diagnosis/classes.ts'
import type { Observation } from '../../../diagnosis/features.ts'
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import type { TestSizes } from '../../../diagnosis/latent.ts'
import { type Posterior, type Priors, weighed } from '../../../diagnosis/posterior.ts'
import { type Candidate, type Suspect, suspectsOf } from '../../../diagnosis/suspects.ts'
import { type Evidence, logEvidence } from './evidence.ts'

/** What the readings leave of the suspicion. */
export interface Inferred {
  readonly all: readonly Suspect[]
  readonly posterior: Posterior
  readonly classes: readonly Class[]
  /** How likely each cause was before. */
  readonly priors: ReadonlyMap<Cause, number>
}

/** Weighs every cause at every severity on every kind of machine that it may be. */
export function infer(
  candidates: readonly Candidate[],
  observations: readonly Observation[],
  {
    sizes,
    priors,
    evidence,
  }: {
    readonly sizes: TestSizes
    /** Left out for equal ones. */
    readonly priors: Priors | undefined
    readonly evidence: Evidence
  },
): Inferred | undefined {
  const all = candidates.flatMap((candidate) => suspectsOf(candidate, sizes, priors))
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
  return { all, posterior, classes: classes(all, observations, posterior), priors: before }
}
