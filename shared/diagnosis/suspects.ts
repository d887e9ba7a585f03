import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Effect } from './effects.ts'
import type { Observation } from './features.ts'
import type { Finer } from './finer.ts'
import type { Cause, Hypothesis } from './hypotheses.ts'
import { afterBaseline, priorLatent, spreadBy, type TestSizes } from './latent.ts'
import { type Doubt, mistakesOf } from './mistakes.ts'
import type { Priors } from './posterior.ts'
import { added } from './spread.ts'

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
    const { cause, severity, impact, mean, along, width } = effect
    return {
      cause,
      severity,
      width: cause !== 'none' && impact < MATTERS ? OF_LITTLE * width : width,
      impact: impact as number | undefined,
      mean: baseline === undefined ? mean : added(mean, found.shift),
      spread: { common: found.covariance, along, own: ownOf(effect, sound.mean, knowledge) },
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

/** What the change of a fault may be off by besides what its curve may miss: variance of each reading. */
function ownOf(
  { mean, carried }: Finer,
  sound: Float64Array,
  knowledge: Candidate['knowledge'],
): Float64Array {
  if (knowledge === 'model') return carried
  const own = new Float64Array(mean.length)
  for (let i = 0; i < own.length; i += 1) {
    const off = figures.discrepancy.ofTheChange * ((mean[i] as number) - (sound[i] as number))
    own[i] = (carried[i] as number) + off * off
  }
  return own
}
