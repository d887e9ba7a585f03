import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Effect } from './effects.ts'
import { FEATURES, type Observation } from './features.ts'
import type { Finer } from './finer.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'
import { afterBaseline, priorLatent, spreadBy, type TestSizes } from './latent.ts'
import { type Doubt, mistakesOf } from './mistakes.ts'
import type { Priors } from './posterior.ts'

/** A hypothesis about a machine of one kind, with ln of how likely it is before these readings. */
export interface Suspect extends Hypothesis {
  readonly logPrior: number
  /** Share of the capacity that it costs; not known of a mistake. */
  readonly impact: number | undefined
  /** Of a mistake: what it doubts. */
  readonly doubts?: Doubt
}

/** Readings of the machine when it was sound, and what the model says of it in that weather. */
export interface Baseline {
  readonly sound: Effect
  readonly observations: readonly Observation[]
  readonly sizes: TestSizes
}

/** A kind of machine that it may be. */
export interface Candidate {
  /** How common it is among those that it may be. */
  readonly share: number
  /** The sound machine first; from {@link solvedEffects} or {@link carriedEffects}. */
  readonly effects: readonly Finer[]
  readonly knowledge: 'model' | 'kind'
  readonly baseline?: Baseline | undefined
}

/** Share of the capacity that a fault costs from which on it matters. */
export const MATTERS = figures.severity.mattersFrom
/** How common a fault that costs less is among what a shop is brought, beside one that matters. */
const OF_LITTLE = figures.severity.ofLittle

/** Variance of what lies anywhere in a span, as a part of its square. */
const UNIFORM = 12

/**
 * Everything that a machine of one kind may have, with spread and prior. What the model is off by
 * of the sound machine is known better after a baseline; what it is off by of a fault's change is not.
 *
 * @param priors - Left out for equal ones.
 * @param doubts - What may be a mistake: a share of its prior each.
 */
export function suspectsOf(
  { share, effects, knowledge, baseline }: Candidate,
  sizes: TestSizes,
  priors: Priors | undefined,
  doubts: readonly Doubt[] = ['anything'],
): readonly Suspect[] {
  const [sound] = effects
  if (sound === undefined) return []
  const before = priorLatent(knowledge, sound.mean)
  const { latent, logLikelihood } = baseline
    ? afterBaseline(before, baseline.sound, baseline.observations, baseline.sizes)
    : { latent: before, logLikelihood: 0 }
  const spreads = new Map<Effect['columns'], ReturnType<typeof spreadBy>>()
  const hypotheses = effects.map((effect) => {
    const found = spreads.get(effect.columns) ?? spreadBy(latent, effect, sizes)
    spreads.set(effect.columns, found)
    const { cause, severity, impact, mean, width } = effect
    return {
      cause,
      severity,
      width: cause !== 'none' && impact < MATTERS ? OF_LITTLE * width : width,
      impact: impact as number | undefined,
      mean: sum(mean, found.shift),
      covariance: covarianceOf(effect, found.covariance, sound.mean, knowledge),
      isGuess: knowledge === 'kind',
    }
  })
  const mistakes = mistakesOf(hypotheses[0] as Hypothesis, sound, doubts).map((mistake) => ({
    ...mistake,
    width: 1,
    impact: undefined,
  }))
  const all = [...hypotheses, ...mistakes]
  const widths = new Map<Cause, number>()
  for (const { cause, width } of all) widths.set(cause, (widths.get(cause) ?? 0) + width)
  const priorOf = (cause: Cause) => (priors === undefined ? 1 : (priors[cause] ?? 0))
  const total = [...widths.keys()].reduce((sum, cause) => sum + priorOf(cause), 0)
  return all.map(({ width, ...hypothesis }) => ({
    ...hypothesis,
    logPrior:
      Math.log(share) +
      logLikelihood +
      Math.log(
        ((priorOf(hypothesis.cause) / total) * width) / (widths.get(hypothesis.cause) as number),
      ),
  }))
}

/** What is not known of machine and test, where in its span the severity lies, and what the change may be off by. */
function covarianceOf(
  { mean, along, carried }: Finer,
  known: Float64Array,
  sound: Float64Array,
  knowledge: Candidate['knowledge'],
): Float64Array {
  const n = FEATURES.length
  const covariance = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) {
    const part = (along[i] as number) / UNIFORM
    for (let j = 0; j < n; j += 1) {
      covariance[i * n + j] = (known[i * n + j] as number) + part * (along[j] as number)
    }
    const change = (mean[i] as number) - (sound[i] as number)
    const off = knowledge === 'model' ? 0 : figures.discrepancy.ofTheChange * change
    covariance[i * n + i] = (covariance[i * n + i] as number) + off * off + (carried[i] as number)
  }
  return covariance
}

function sum(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length)
  for (let i = 0; i < out.length; i += 1) out[i] = (a[i] as number) + (b[i] as number)
  return out
}
