import type { Effect } from './effects.ts'

/** Effects at more severities, straight between those that were solved; from a sound machine upwards. */
export function finer(effects: readonly Effect[], parts: number): readonly Effect[] {
  const [sound, ...faults] = effects
  if (sound === undefined) return []
  const found: Effect[] = [sound]
  let before = sound
  for (const effect of faults) {
    if (effect.cause !== before.cause) before = sound
    const [from, to] = [before.severity, effect.severity]
    for (let part = 1; part <= parts; part += 1) {
      const share = part / parts
      found.push({
        ...effect,
        severity: from + share * (to - from),
        impact: share * effect.impact + (1 - share) * before.impact,
        mean: effect.mean.map(
          (value, i) => share * value + (1 - share) * (before.mean[i] as number),
        ),
      })
    }
    before = effect
  }
  return found
}
