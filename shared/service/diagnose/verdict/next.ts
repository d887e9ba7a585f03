import type { Observation } from '../../../diagnosis/features.ts'
import { type Look, worthLooking } from '../../../diagnosis/looks.ts'
import { type Candidate, USUAL_CANDIDATES, worthReading } from '../../../diagnosis/next.ts'
import type { Posterior } from '../../../diagnosis/posterior.ts'
import type { Inferred } from '../posterior/infer.ts'

/** A reading or a look, with what it is worth. */
export interface NextStep {
  readonly id: string
  readonly minutes: number
  /** bit */
  readonly gain: number
  readonly perMinute: number
}

/** Hypotheses beyond so many say nothing to the worth of a reading. */
const MOST_HYPOTHESES = 40
/** Gain below which a reading is not worth its time, bit. */
const LEAST_GAIN = 0.03

/** Further readings and looks, the best for its minutes first; those that bring nothing are left out. */
export function nextSteps(
  { all, posterior }: Inferred,
  observations: readonly Observation[],
  candidates: readonly Candidate[] = USUAL_CANDIDATES,
  looked: readonly Look['id'][] = [],
): readonly NextStep[] {
  const order = [...posterior.weights.keys()]
    .sort((a, b) => (posterior.weights[b] as number) - (posterior.weights[a] as number))
    .slice(0, MOST_HYPOTHESES)
  const likely = order.map((i) => all[i] as (typeof all)[number])
  const weights = Float64Array.from(order, (i) => posterior.weights[i] as number)
  const reading = worthReading(
    likely,
    observations,
    { causes: posterior.causes, weights } satisfies Posterior,
    candidates,
  ).map(({ feature, minutes, gain, perMinute }) => ({ id: feature, minutes, gain, perMinute }))
  const looks = worthLooking(posterior.causes)
    .filter(({ id }) => !looked.includes(id))
    .map(({ id, minutes, gain, perMinute }) => ({ id, minutes, gain, perMinute }))
  return [...reading, ...looks]
    .filter(({ gain }) => gain >= LEAST_GAIN)
    .sort((a, b) => b.perMinute - a.perMinute)
}
