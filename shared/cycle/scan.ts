import type { InPieces } from '../pieces.ts'
import type { Solution } from './branch.ts'
import type { Guess } from './evaluate.ts'
import { type Setup, setUp } from './setup.ts'
import { heldShare, mustRise, solveAnyhow, solveFrom, solvingFrom } from './solve.ts'
import type { Case } from './types.ts'

/** A high side held fast, with the balances that this leaves solved. */
interface Level {
  readonly solution: Solution
  /** What the machine holds as a share of its charge. */
  readonly share: number
  /** The charge asks for a higher one. */
  readonly rises: boolean
}

/** The lowest condensing temperature looked at, above the outdoor air, K. */
const LEAST_EXCESS_K = 1

/** High sides in even steps of their condensing temperature, from the highest, Pa. */
function levelsDownFrom(setup: Setup, toPa: number, steps: number): (step: number) => number {
  const { bubble } = setup.fluid.refrigerant
  const { faults, conditions } = setup.case
  const fromK = conditions.ambientK + LEAST_EXCESS_K
  const toK = bubble.temperature(Math.min(toPa, 0.995 * setup.fluid.highestPa) - faults.airPa)
  return (step) => bubble.pressure(toK + ((fromK - toK) * step) / steps) + faults.airPa
}

/** Levels of the last look, from the highest, 0, to the lowest. */
const FINEST = 120
/** How far apart those of each look are: a first, one where that was not plain, and a last. */
const FIRST_LOOKS = [20, 5]
const LAST_LOOK = 1
/** Of the closest of the first looks: the last is only at what lies between two that differ. */
const CLOSE = 5
const HALVINGS = 30
/** Share of its charge so small that no lower high side can hold it. */
const LITTLE = 0.5

/** Levels that were looked at; `null` where nothing balances. */
type Ladder = (Level | null | undefined)[]

/** A search of the high side for where the charge begins to fit: what was looked at is kept for a closer look. */
export interface Search {
  readonly setup: Setup
  readonly toPa: number
  readonly ladder: Ladder
  /** High sides, Pa, at which the charge begins to fit without a state: the levels there are of two kinds. */
  readonly jumps: number[]
}

export const searchBelow = (setup: Setup, toPa: number): Search => ({
  setup,
  toPa,
  ladder: Array.from({ length: FINEST + 1 }),
  jumps: [],
})

/**
 * The steady state below a high side: where the charge fits above and asks for more below.
 * `tripped` where it asks for more at every one; `undefined` where nothing is plain. Slower than a
 * solve from a guess by several times.
 *
 * @param last - A closer look after one that was not plain.
 */
export function* findBelow(
  search: Search,
  last = false,
): InPieces<Solution | 'tripped' | undefined> {
  const { setup, ladder, jumps } = search
  for (const stride of last ? [LAST_LOOK] : FIRST_LOOKS) {
    yield* climb(search, stride)
    let above: Level | undefined
    let [balanced, rising] = [0, 0]
    for (let at = 0; at <= FINEST; at += stride) {
      const level = ladder[at]
      if (level == null) continue
      balanced += 1
      if (level.rises) rising += 1
      if (above !== undefined && !above.rises && level.rises) {
        const [low, high] = [highSideOf(level), highSideOf(above)]
        if (last || !jumps.some((pa) => pa >= low && pa <= high)) {
          const found = yield* between(setup, above, level)
          if (typeof found === 'number') jumps.push(found)
          else if (found !== undefined) return found
        }
      }
      above = level
    }
    // plain where every level balances, and all ask for more; what lies below one that holds little need not
    const isAll =
      balanced === FINEST / stride + 1 ||
      (above !== undefined && above.share < LITTLE && ladder[(balanced - 1) * stride] === above)
    if (rising === balanced && rising > 0 && (isAll || stride === LAST_LOOK)) return 'tripped'
  }
  return undefined
}

const highSideOf = ({ solution }: Level) => solution.trial.guess.dischargePa

/** Whether a last look can show what the looks before it did not: where balances, or what the charge asks for, ends. */
function isOpen(ladder: Ladder, at: number): boolean {
  const rises = (step: number) => ladder[step * CLOSE]?.rises
  const [above, below] = [Math.ceil(at / CLOSE), Math.floor(at / CLOSE)]
  return rises(above - 1) !== rises(above) || rises(below) !== rises(below + 1)
}

/**
 * Look at every so many levels: down from the highest, each from the last that balanced, then up from
 * the lowest those that did not. What is above all that balance is looked at closer from there alone,
 * and for some levels by itself: an evaporator that is flooded by far may balance there in another way.
 */
function* climb({ setup, toPa, ladder }: Search, stride: number): InPieces<void> {
  const highSide = levelsDownFrom(setup, toPa, FINEST)
  const seen = (at: number) => ladder[at] ?? undefined
  const isLast = stride === LAST_LOOK
  const isEmpty = !ladder.some((level) => level != null)
  const isFirst = stride === FIRST_LOOKS[0]
  const top = ladder.findIndex((level) => level != null)
  const isJustAbove = (at: number) => at < top && at >= top - 2 * CLOSE
  let before: Guess | undefined
  for (let at = 0; at <= FINEST; at += stride) {
    const isTried = isLast
      ? seen(at) === undefined && (isJustAbove(at) || (isOpen(ladder, at) && seen(at - 1)))
      : ladder[at] === undefined && (before || isEmpty)
    if (isTried) {
      yield
      const start = { ...(before ?? firstOf(setup)), dischargePa: highSide(at) }
      ladder[at] = levelFrom(setup, start, isLast || (isFirst && before === undefined)) ?? null
    }
    before = seen(at)?.solution.trial.guess ?? before
  }
  for (let at = FINEST - stride; at >= 0; at -= stride) {
    const below = seen(at + stride)
    if (below === undefined || seen(at) !== undefined || (isLast && !isOpen(ladder, at))) continue
    yield
    const start = { ...below.solution.trial.guess, dischargePa: highSide(at) }
    ladder[at] = levelFrom(setup, start, isLast) ?? null
  }
}

/** Where the first level is tried from, whatever its high side. */
const firstOf = ({ fluid, case: { conditions, faults } }: Setup): Guess => ({
  suctionPa: fluid.saturationPressure(conditions.returnAirK - 20),
  dischargePa: 0,
  superheatK: 6,
  stroke: faults.strokeStuck ?? 1,
})

/** The balances at a high side, from a guess or, where that is asked for, from some that are less usual. */
function levelFrom(setup: Setup, start: Guess, anyhow = false): Level | undefined {
  const solution =
    solveFrom(setup, start, 'discharge') ??
    (anyhow ? solveAnyhow(setup, 2, 'discharge', start) : undefined)
  const share = solution ? heldShare(setup, solution) : 0
  return solution && { solution, share, rises: share < 1 }
}

/** Levels between the highest and the lowest by which a trip is seen at once, and above the cut-out. */
const RUNGS = { below: 6, above: 2 }
/** Share of the charge that the machine must be short of everywhere, between two levels as well. */
const SHORT = 0.02

/** Levels at none of which a machine holds its charge: where those of a case near by start. */
export type Rungs = readonly Guess[]

/**
 * Whether a machine trips because it has no state at all, below its cut-out or above: at every level it
 * holds clearly less than its charge. For a case near by one that was found to be so.
 *
 * @param near - The levels of that one, where they are known.
 * @param free - A state near by, where there was one.
 * @returns undefined where it is not plain.
 */
export function* tripsPlainly(
  setup: Setup,
  cutOutPa: number,
  near: Rungs | undefined,
  free: Guess | undefined,
): InPieces<Rungs | undefined> {
  const { highestPa } = setup.fluid
  const below = levelsDownFrom(setup, cutOutPa, RUNGS.below)
  const topPa = Math.max(0.995 * highestPa, below(0))
  // from the cut-out down, then up from it
  const highSides = [
    ...Array.from({ length: RUNGS.below + 1 }, (_, i) => below(i)),
    ...Array.from({ length: RUNGS.above }, (_, i) => {
      return below(0) + ((topPa - below(0)) * (i + 1)) / RUNGS.above
    }),
  ]
  const rungs: Guess[] = []
  const shares: number[] = []
  for (const [index, dischargePa] of highSides.entries()) {
    yield
    const before = index === RUNGS.below + 1 ? rungs[0] : rungs.at(-1)
    const start = near?.[index] ?? before ?? free ?? firstOf(setup)
    const level = levelFrom(setup, { ...start, dischargePa })
    if (level === undefined || !level.rises) return undefined
    rungs.push(level.solution.trial.guess)
    if (index <= RUNGS.below) shares.push(level.share)
    else shares.unshift(level.share)
  }
  return peakOf(shares) < 1 - SHORT ? rungs : undefined
}

/** Whether nothing balances at any of a few high sides: for a case near by one where that is so at all of them. */
export function* nothingBalances(setup: Setup, cutOutPa: number): InPieces<boolean> {
  const below = levelsDownFrom(setup, cutOutPa, RUNGS.below)
  for (let index = 0; index <= RUNGS.below; index += 1) {
    yield
    if (levelFrom(setup, { ...firstOf(setup), dischargePa: below(index) })) return false
  }
  return true
}

/** Largest of some values in even steps, or of the parabola through it and its neighbours. */
function peakOf(values: readonly number[]): number {
  const most = Math.max(...values)
  const at = values.indexOf(most)
  const [before, after] = [values[at - 1], values[at + 1]]
  if (before === undefined || after === undefined) return most
  const bend = before - 2 * most + after
  return bend < 0 ? most - (after - before) ** 2 / (8 * bend) : most
}

/** Liquid face of a condenser from which on a second state is looked for. */
const FLOODED = 0.3
const NUDGE = 1.01

/**
 * A condenser flooded by far can hold less the higher its pressure: then a state may stand on the
 * wrong side, from which it would run away.
 */
export function standsFirm(setup: Setup, { trial }: Solution): boolean {
  const { guess, condensation } = trial
  if (condensation.faces.liquid < FLOODED) return true
  const above = { ...guess, dischargePa: guess.dischargePa * NUDGE }
  const nudged = solveFrom(setup, above, 'discharge')
  return nudged === undefined || !mustRise(setup, nudged)
}

/** Where it does not, the one that a machine comes to from rest lies below. */
export function* settled(setup: Setup, solution: Solution): InPieces<Solution> {
  if (standsFirm(setup, solution)) return solution
  const below = yield* findBelow(searchBelow(setup, solution.trial.guess.dischargePa / NUDGE))
  return below === undefined || below === 'tripped' ? solution : below
}

/** Shares of the way at which a bracket is cut, the first that balances. */
const CUTS = [0.5, 0.35, 0.65, 0.2, 0.8]

/** Share to which a bracket is narrowed before the next solve from within it, and where it ends. */
const NARROWER = 0.05
const NARROWEST = 1e-5

/**
 * Narrow the bracket between two high sides until a solve from within finds the state; where it ends
 * without one, that high side, Pa; nothing where none within balances.
 */
function* between(
  setup: Setup,
  above: Level,
  below: Level,
): InPieces<Solution | number | undefined> {
  let [high, low] = [above, below]
  let tried = Number.POSITIVE_INFINITY
  for (let step = 0; step < HALVINGS; step += 1) {
    yield
    const [a, b] = [high.solution.trial.guess, low.solution.trial.guess]
    const width = a.dischargePa / b.dischargePa - 1
    const isDue = width <= NARROWER * tried || step === 0
    if (isDue) tried = width
    let middle: Level | undefined
    for (const cut of CUTS) {
      const dischargePa = a.dischargePa + cut * (b.dischargePa - a.dischargePa)
      for (const near of [a, b]) {
        if (isDue && cut === CUTS[0]) {
          const found = yield* solvingFrom(setup, { ...near, dischargePa })
          if (found !== undefined) return found
        }
        middle = levelFrom(setup, { ...near, dischargePa })
        if (middle !== undefined) break
      }
      if (middle !== undefined) break
    }
    if (middle === undefined) return undefined
    if (width < NARROWEST) break
    if (middle.rises) low = middle
    else high = middle
  }
  return highSideOf(low)
}

/** What a fine scan of the high side saw. */
interface Scan {
  /** High sides at which evaporator, device and compressor agree. */
  readonly balanced: number
  readonly tried: number
  /** Between two neighbours the charge begins or ceases to fit: a steady state lies there. */
  readonly crossings: number
  /** At the highest that balances, the charge asks for more. */
  readonly risesAtTop: boolean
}

/**
 * Is there a steady state below a high side, and how many? It confirms, in tests, what `run` says: every
 * level in turn, each from several starts.
 */
export function scanHighSide(asked: Case, toPa: number, steps = FINEST): Scan {
  const setup = setUp(asked)
  const highSide = levelsDownFrom(setup, toPa, steps)
  let near = firstOf(setup)
  let [balanced, crossings] = [0, 0]
  let risesAtTop = false
  let before: boolean | undefined
  for (let step = 0; step <= steps; step += 1) {
    const level = levelFrom(setup, { ...near, dischargePa: highSide(step) }, true)
    if (level === undefined) continue
    near = level.solution.trial.guess
    balanced += 1
    if (before === undefined) risesAtTop = level.rises
    else if (level.rises !== before) crossings += 1
    before = level.rises
  }
  return { balanced, tried: steps + 1, crossings, risesAtTop }
}
