import type { Effect } from './effects.ts'
import { monotoneSlopes } from './monotone.ts'

/** An effect at a severity between others, with what that leaves open. */
export interface Finer extends Effect {
  /** From the severity before to this one: the true one lies anywhere around it. */
  readonly along: Float64Array
  /** Variance by which the curve may miss. */
  readonly carried: Float64Array
}

/** Share of a span between two solved severities by which the curve may miss what lies between. */
const BENT = 0.04
/** The same of how far curve and straight line lie apart: where a store runs empty no curve fits. */
const UNSURE = 0.4

/**
 * Effects at more severities, on curves through those that were solved, from a sound machine upwards.
 * The curves are monotone between neighbours (Fritsch and Butland 1984).
 */
export function finer(effects: readonly Effect[], parts: number): readonly Finer[] {
  const [sound, ...faults] = effects
  if (sound === undefined) return []
  const none = new Float64Array(sound.mean.length)
  const byCause = new Map<Effect['cause'], Effect[]>()
  for (const effect of faults) {
    byCause.set(effect.cause, [...(byCause.get(effect.cause) ?? [sound]), effect])
  }
  const curves = [...byCause.values()].flatMap((nodes) => curveThrough(nodes, parts))
  return [{ ...sound, along: none, carried: none }, ...curves]
}

function curveThrough(nodes: readonly Effect[], parts: number): readonly Finer[] {
  const at = nodes.map(({ severity }) => severity)
  const [sound, ...others] = nodes
  if (sound === undefined) return []
  const all = Array.from(sound.mean, (_, i) =>
    monotoneSlopes(
      at,
      nodes.map(({ mean }) => mean[i] as number),
    ),
  )
  return others.flatMap((effect, k) => {
    const before = nodes[k] as Effect
    const width = effect.severity - before.severity
    const span = effect.mean.map((value, i) => value - (before.mean[i] as number))
    let last = before.mean
    return Array.from({ length: parts }, (_, part): Finer => {
      const share = (part + 1) / parts
      const straight = before.mean.map((value, i) => value + share * (span[i] as number))
      const mean = before.mean.map((value, i) => {
        const [m0, m1] = [all[i]?.[k] ?? 0, all[i]?.[k + 1] ?? 0]
        return hermite(share, value, effect.mean[i] as number, m0 * width, m1 * width)
      })
      const along = mean.map((value, i) => value - (last[i] as number))
      last = mean
      return {
        ...effect,
        severity: before.severity + share * width,
        impact: before.impact + share * (effect.impact - before.impact),
        mean,
        along,
        carried: mean.map(
          (value, i) =>
            (BENT * (span[i] as number)) ** 2 + (UNSURE * (value - (straight[i] as number))) ** 2,
        ),
      }
    })
  })
}

/** Cubic of Hermite from y0 to y1 by the slopes there, both over the whole width. */
function hermite(t: number, y0: number, y1: number, m0: number, m1: number): number {
  const [t2, t3] = [t * t, t * t * t]
  return (
    (2 * t3 - 3 * t2 + 1) * y0 + (t3 - 2 * t2 + t) * m0 + (-2 * t3 + 3 * t2) * y1 + (t3 - t2) * m1
  )
}
