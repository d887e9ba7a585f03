import type { Effect } from './effects.ts'

/** An effect at a severity between others, with what that leaves open. */
export interface Finer extends Effect {
  /** From the severity before to this one: the true one lies anywhere around it. */
  readonly along: Float64Array
  /** Variance by which the straight line may miss. */
  readonly carried: Float64Array
}

/** Share of a span between two solved severities by which a straight line may miss what lies between. */
const BENT = 0.08

/** Effects at more severities, straight between those that were solved; from a sound machine upwards. */
export function finer(effects: readonly Effect[], parts: number): readonly Finer[] {
  const [sound, ...faults] = effects
  if (sound === undefined) return []
  const none = new Float64Array(sound.mean.length)
  const found: Finer[] = [{ ...sound, along: none, carried: none }]
  let before = sound
  for (const effect of faults) {
    if (effect.cause !== before.cause) before = sound
    const span = effect.mean.map((value, i) => value - (before.mean[i] as number))
    const carried = span.map((value) => (BENT * value) ** 2)
    const along = span.map((value) => value / parts)
    for (let part = 1; part <= parts; part += 1) {
      const share = part / parts
      const between = (from: number, to: number) => from + share * (to - from)
      found.push({
        ...effect,
        severity: between(before.severity, effect.severity),
        impact: between(before.impact, effect.impact),
        mean: effect.mean.map((value, i) => between(before.mean[i] as number, value)),
        along,
        carried,
      })
    }
    before = effect
  }
  return found
}
