import {
  type GaugeScatter,
  plateauOf,
  type RiseFit,
  type RisePoint,
  variance,
} from './rise-shape.ts'
import { type Levellings, type RiseSolver, riseSolver } from './rise-solver.ts'

interface FitLimits {
  /** No part that levels off as water does may end above this, Pa. */
  readonly highestWaterPa: number
  /** Where a leak ends, Pa. */
  readonly airPa: number
  /** Slowest levelling that is looked for, s. */
  readonly slowestS: number
}

/** The shapes that a standing vacuum can take, each at its best. */
export interface RiseFits {
  readonly flat: RiseFit
  readonly steady: RiseFit
  /** Levels off where water can push it. */
  readonly levelling: RiseFit
  /** The same with a steady rise beside it. */
  readonly both: RiseFit
  /** Levels off within the watch, at whatever level. */
  readonly free: RiseFit
  /** The same with a steady rise beside it. */
  readonly freeAndSteady: RiseFit
  /** Slows down on its way to the air or beyond, as a leak through a long narrow path does. */
  readonly slowing: RiseFit
  /** Levelling fits that the data do not rule out against the best of their kind (ΔBIC below 4). */
  readonly possibleLevellings: readonly RiseFit[]
  readonly possibleFree: readonly RiseFit[]
  /** Scatter about the best fit, as a multiple of what was expected of the gauge. */
  readonly scatter: number
  /** What was expected at the last reading, Pa. */
  readonly expectedSigmaPa: number
  /** How often a reading was put into an exponential. */
  readonly evaluations: number
}

const GRID = 88
const POSSIBLE = 4
const REFINEMENTS = 4
const FINER = 9
/** Time constants that a watch must last for a levelling to be seen: 78 % of the way. */
export const LEVELLED = 1.5
/** A leak that is slower than this many watches is a straight line. */
const SLOWEST_LEAK = 20
/** Most time constants that a search tries: the grid, and the finer ones about the best of five shapes. */
export const MOST_CONSTANTS = GRID + 5 * REFINEMENTS * FINER

/**
 * Fits the shapes that a standing vacuum can take.
 *
 * The time constant alone is searched, over a logarithmic grid and finer ones about its best: no start
 * values, nothing to diverge, and a cost that the number of readings bounds.
 *
 * @param points - At least four, times rising.
 */
export function fitRise(
  points: readonly RisePoint[],
  scatter: GaugeScatter,
  limits: FitLimits,
): RiseFits {
  const solver = riseSolver(points, scatter)
  const { flat, steady } = solver
  const spanS = (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)
  // a levelling slower than the watch would only be the steady rise under another name
  const seenS = spanS / LEVELLED
  const slowestLeakS = SLOWEST_LEAK * spanS
  const grid = timeConstants(spanS, points.length, Math.max(limits.slowestS, slowestLeakS)).map(
    (constantS) => at(solver, constantS, limits),
  )
  const search = (pick: (tried: Tried) => RiseFit, slowest: number) => {
    const kept = grid.map(pick).filter((fit) => rises(fit) && fit.constantS <= slowest)
    const again = (constantS: number) => pick(at(solver, constantS, limits))
    return [...kept, ...refined(kept, slowest, again)]
  }
  const levellings = search(({ water }) => water.levelling, limits.slowestS)
  const frees = search(({ free }) => free.levelling, seenS)
  const levelling = best(levellings, { ...flat, model: 'levelling' })
  const free = best(frees, { ...flat, model: 'levelling' })
  const none = { ...steady, model: 'levelling-and-steady' as const }
  const both = best(
    search(({ water }) => water.both, seenS),
    none,
  )
  const freeAndSteady = best(
    search(({ free: found }) => found.both, seenS),
    none,
  )
  const slowing = best(
    search(({ toAir }) => toAir, slowestLeakS),
    { ...steady, model: 'levelling' },
  )
  const chosen = best([steady, levelling, both, free, freeAndSteady], flat, 0)
  return {
    flat,
    steady,
    levelling,
    both,
    free,
    freeAndSteady,
    slowing,
    possibleLevellings: levellings.filter(({ bic }) => bic <= levelling.bic + POSSIBLE),
    possibleFree: frees.filter(({ bic }) => bic <= free.bic + POSSIBLE),
    scatter: Math.sqrt(variance(chosen, points.length, scatter)),
    expectedSigmaPa: scatter.sigmaOf(points.at(-1)?.pressurePa ?? 0),
    evaluations: solver.evaluations(),
  }
}

/** Each shape at one time constant. */
interface Tried {
  readonly free: Levellings
  readonly water: Levellings
  readonly toAir: RiseFit
}

function at(solver: RiseSolver, constantS: number, { highestWaterPa, airPa }: FitLimits): Tried {
  const free = solver.free(constantS)
  const atMost = (fit: RiseFit) =>
    plateauOf(fit) > highestWaterPa ? solver.held(fit, highestWaterPa) : fit
  return {
    free,
    water: { levelling: atMost(free.levelling), both: atMost(free.both) },
    toAir: plateauOf(free.levelling) < airPa ? solver.held(free.levelling, airPa) : free.levelling,
  }
}

const rises = ({ stepPa, slope }: RiseFit) => stepPa >= 0 && slope >= 0

/** Finer grids about the best of a coarse one: the last is narrower than any gauge can tell. */
function refined(
  coarse: readonly RiseFit[],
  slowestS: number,
  fitAt: (constantS: number) => RiseFit,
): readonly RiseFit[] {
  const [first] = coarse.toSorted((one, other) => one.bic - other.bic)
  if (!first) return []
  let centre = first
  let width = 0.08
  for (let round = 0; round < REFINEMENTS; round += 1) {
    const finer = Array.from({ length: FINER }, (_, index) =>
      Math.min(centre.constantS * Math.exp(width * (index / 4 - 1)), slowestS),
    )
    centre = finer
      .map(fitAt)
      .filter(rises)
      .reduce((kept, next) => (next.bic < kept.bic ? next : kept), centre)
    width /= 4
  }
  return [centre]
}

/** The best of some fits; where there is none, `otherwise` at a price that no comparison pays. */
const best = (fits: readonly RiseFit[], otherwise: RiseFit, price = 1e3): RiseFit =>
  fits.reduce((kept, next) => (next.bic < kept.bic ? next : kept), {
    ...otherwise,
    bic: otherwise.bic + price,
  })

function timeConstants(spanS: number, count: number, slowestS: number): readonly number[] {
  const quickest = spanS / count / 2
  const ratio = Math.max(slowestS, 2 * quickest) / quickest
  return Array.from({ length: GRID }, (_, index) => quickest * ratio ** (index / (GRID - 1)))
}
