import type { Effect } from './effects.ts'
import { monotoneSlopes } from './monotone.ts'

/** An effect at a severity between others, with what that leaves open. */
export interface Finer extends Effect {
  /** How much of the severities it stands for. */
  readonly width: number
  /** The true one lies anywhere between both ends of that: 1 σ of the readings by it; nothing of a sound machine. */
  readonly along: Float64Array | undefined
  /** Variance by which the curve may miss. */
  readonly carried: Float64Array
}

/** Share of a span between two solved severities by which the curve may miss what lies between. */
const BENT = 0.04
/** The same of how far curve and straight line lie apart: where a store runs empty no curve fits. */
const UNSURE = 0.4

/**
 * Effects at more severities, on curves through those that were solved: from a sound machine upwards,
 * but for what was solved at severity 0 itself. Each stands for a part of a span, in its middle.
 * The curves are monotone between neighbours (Fritsch and Butland 1984).
 */
export function finer(effects: readonly Effect[], parts: number): readonly Finer[] {
  const [sound, ...faults] = effects
  if (sound === undefined) return []
  const none = new Float64Array(sound.mean.length)
  const byCause = new Map<Effect['cause'], Effect[]>()
  for (const effect of faults) {
    const from = effect.severity === 0 ? [] : [sound]
    byCause.set(effect.cause, [...(byCause.get(effect.cause) ?? from), effect])
  }
  const curves = [...byCause.values()].flatMap((nodes) => curveThrough(nodes, parts))
  return [{ ...sound, width: 1, along: undefined, carried: none }, ...curves]
}

function curveThrough(nodes: readonly Effect[], parts: number): readonly Finer[] {
  const at = nodes.map(({ severity }) => severity)
  const [first, ...others] = nodes
  if (first === undefined) return []
  const slopes = Array.from(first.mean, (_, i) =>
    monotoneSlopes(
      at,
      nodes.map(({ mean }) => mean[i] as number),
    ),
  )
  return others.flatMap((effect, k) => {
    const before = nodes[k] as Effect
    const width = effect.severity - before.severity
    const places = 2 * parts
    // readings at both ends of each part and in its middle
    const along = Array.from({ length: places + 1 }, (_, place) =>
      meansBetween(before.mean, effect.mean, slopes, k, width, place / places),
    )
    return Array.from({ length: parts }, (_, part): Finer => {
      const share = (part + 0.5) / parts
      const [from, mean, to] = along.slice(2 * part) as [Float64Array, Float64Array, Float64Array]
      return {
        ...effect,
        severity: before.severity + share * width,
        impact: before.impact + share * (effect.impact - before.impact),
        mean,
        width: width / parts,
        along: betweenEnds(from, to),
        carried: missedBetween(before.mean, effect.mean, mean, share),
      }
    })
  })
}

/** Readings at a share of the way between two nodes, the slopes there being those of node k and the next. */
function meansBetween(
  before: Float64Array,
  after: Float64Array,
  slopes: readonly Float64Array[],
  k: number,
  width: number,
  share: number,
): Float64Array {
  const mean = new Float64Array(before.length)
  for (let i = 0; i < mean.length; i += 1) {
    const slope = slopes[i] as Float64Array
    const [m0, m1] = [slope[k] as number, slope[k + 1] as number]
    mean[i] = hermite(share, before[i] as number, after[i] as number, m0 * width, m1 * width)
  }
  return mean
}

/** Variance by which the curve may miss what lies at a share of the way. */
function missedBetween(
  before: Float64Array,
  after: Float64Array,
  mean: Float64Array,
  share: number,
): Float64Array {
  const variance = new Float64Array(mean.length)
  for (let i = 0; i < mean.length; i += 1) {
    const start = before[i] as number
    const change = (after[i] as number) - start
    const straight = start + share * change
    variance[i] = (BENT * change) ** 2 + (UNSURE * ((mean[i] as number) - straight)) ** 2
  }
  return variance
}

/** Variance of what lies anywhere in a span, as a part of its square. */
const UNIFORM = 12

/** Standard deviation of readings that lie anywhere between two ends, all at the same place. */
function betweenEnds(from: Float64Array, to: Float64Array): Float64Array {
  const along = new Float64Array(from.length)
  for (let i = 0; i < along.length; i += 1) {
    along[i] = ((to[i] as number) - (from[i] as number)) / Math.sqrt(UNIFORM)
  }
  return along
}

/** Cubic of Hermite from y0 to y1 by the slopes there, both over the whole width. */
function hermite(t: number, y0: number, y1: number, m0: number, m1: number): number {
  const [t2, t3] = [t * t, t * t * t]
  return (
    (2 * t3 - 3 * t2 + 1) * y0 + (t3 - 2 * t2 + t) * m0 + (-2 * t3 + 3 * t2) * y1 + (t3 - t2) * m1
  )
}
