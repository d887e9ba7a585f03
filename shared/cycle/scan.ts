import type { InPieces } from '../pieces.ts'
import type { Solution } from './branch.ts'
import { type Setup, setUp } from './setup.ts'
import { mustRise, solveAnyhow, solveFrom, solvingFrom } from './solve.ts'
import type { Case } from './types.ts'

/** A high side held fast, with the balances that this leaves solved. */
interface Level {
  readonly solution: Solution
  /** The charge asks for a higher one. */
  readonly rises: boolean
}

/** The lowest condensing temperature looked at, above the outdoor air, K. */
const LEAST_EXCESS_K = 1

/**
 * Walk down from a high side in even steps of its condensing temperature, each solved from the one
 * before: evaporator, device and compressor agree, the charge is left open. A steady state lies
 * where the charge begins to fit.
 */
function* levels(
  setup: Setup,
  toPa: number,
  steps: number,
  thorough = false,
): Generator<Level | undefined> {
  const { bubble } = setup.fluid.refrigerant
  const { faults, conditions } = setup.case
  const airPa = faults.airPa
  const fromK = conditions.ambientK + LEAST_EXCESS_K
  const toK = bubble.temperature(Math.min(toPa, 0.995 * setup.fluid.highestPa) - airPa)
  let solved = false
  let before = {
    suctionPa: setup.fluid.saturationPressure(conditions.returnAirK - 20),
    superheatK: 6,
    stroke: faults.strokeStuck ?? 1,
  }
  for (let step = 0; step <= steps; step += 1) {
    const dischargePa = bubble.pressure(toK + ((fromK - toK) * step) / steps) + airPa
    const start = { ...before, dischargePa }
    const solution =
      solveFrom(setup, start, 'discharge') ??
      (solved && !thorough ? undefined : solveAnyhow(setup, 2, 'discharge', start))
    if (solution === undefined) yield undefined
    else {
      solved = true
      before = solution.trial.guess
      yield { solution, rises: mustRise(setup, solution) }
    }
  }
}

/** Steps of a first look, and of the second where the first was not plain. */
const LOOKS = [6, 24]
/** Steps of the last look, slow, each from several starts. */
const FINE = 120
const HALVINGS = 30

/**
 * The steady state below a high side: where the charge fits above and asks for more below.
 * `tripped` where it asks for more at every one; `undefined` where nothing is plain. Slower than a solve from a guess by several times.
 */
export function* findBelow(
  setup: Setup,
  toPa: number,
  fine = false,
): InPieces<Solution | 'tripped' | undefined> {
  for (const steps of fine ? [FINE] : LOOKS) {
    let above: Level | undefined
    let [balanced, rising] = [0, 0]
    for (const level of levels(setup, toPa, steps, fine)) {
      yield
      if (level === undefined) continue
      balanced += 1
      if (level.rises) rising += 1
      if (above !== undefined && !above.rises && level.rises) {
        const found = yield* between(setup, above, level)
        if (found !== undefined) return found
      }
      above = level
    }
    // plain where every level balances, and all ask for more
    if (rising === balanced && balanced === steps + 1) return 'tripped'
    if (steps === FINE && rising > 0 && rising === balanced) return 'tripped'
  }
  return undefined
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
  const below = yield* findBelow(setup, solution.trial.guess.dischargePa / NUDGE)
  return below === undefined || below === 'tripped' ? solution : below
}

/** Shares of the way at which a bracket is cut, the first that balances. */
const CUTS = [0.5, 0.35, 0.65, 0.2, 0.8]

/** Narrow the bracket between two high sides until a solve from within finds the state. */
function* between(setup: Setup, above: Level, below: Level): InPieces<Solution | undefined> {
  let [high, low] = [above, below]
  for (let step = 0; step < HALVINGS; step += 1) {
    yield
    const [a, b] = [high.solution.trial.guess, low.solution.trial.guess]
    let middle: Level | undefined
    for (const cut of CUTS) {
      const dischargePa = a.dischargePa + cut * (b.dischargePa - a.dischargePa)
      for (const near of [a, b]) {
        const found = yield* solvingFrom(setup, { ...near, dischargePa })
        if (found !== undefined) return found
        const solution = solveFrom(setup, { ...near, dischargePa }, 'discharge')
        if (solution === undefined) continue
        middle = { solution, rises: mustRise(setup, solution) }
        break
      }
      if (middle !== undefined) break
    }
    if (middle === undefined) return undefined
    if (middle.rises) low = middle
    else high = middle
  }
  return undefined
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

/** Is there a steady state below a high side, and how many? It confirms, in tests, what `run` says. */
export function scanHighSide(asked: Case, toPa: number, steps = 120): Scan {
  let [balanced, crossings] = [0, 0]
  let risesAtTop = false
  let before: boolean | undefined
  for (const level of levels(setUp(asked), toPa, steps, true)) {
    if (level === undefined) continue
    balanced += 1
    if (before === undefined) risesAtTop = level.rises
    else if (level.rises !== before) crossings += 1
    before = level.rises
  }
  return { balanced, tried: steps + 1, crossings, risesAtTop }
}
