import type { Solution } from './branch.ts'
import { type Setup, setUp } from './setup.ts'
import { mustRise, solveFrom, solveSteady } from './solve.ts'
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
function* levels(setup: Setup, toPa: number, steps: number): Generator<Level | undefined> {
  const { bubble } = setup.fluid.refrigerant
  const { faults, conditions } = setup.case
  const airPa = faults.airPa
  const fromK = conditions.ambientK + LEAST_EXCESS_K
  const toK = bubble.temperature(Math.min(toPa, 0.995 * setup.fluid.highestPa) - airPa)
  let before = {
    suctionPa: setup.fluid.saturationPressure(conditions.returnAirK - 20),
    superheatK: 6,
    stroke: faults.strokeStuck ?? 1,
  }
  for (let step = 0; step <= steps; step += 1) {
    const dischargePa = bubble.pressure(toK + ((fromK - toK) * step) / steps) + airPa
    const start = { ...before, dischargePa }
    const solution = solveFrom(setup, start, 'discharge') ?? solveSteady(setup, start, 'discharge')
    if (solution === undefined) yield undefined
    else {
      before = solution.trial.guess
      yield { solution, rises: mustRise(setup, solution) }
    }
  }
}

const COARSE = 36
const HALVINGS = 30

/**
 * The steady state below a high side, where one is; `tripped` where the charge asks for more even
 * there; `undefined` where neither is seen. Slower than a solve from a guess by ten to thirty times.
 */
export function findBelow(setup: Setup, toPa: number): Solution | 'tripped' | undefined {
  let above: Level | undefined
  for (const level of levels(setup, toPa, COARSE)) {
    if (level === undefined) continue
    if (above === undefined && level.rises) return 'tripped'
    if (above !== undefined && level.rises) return between(setup, above, level)
    above = level
  }
  return undefined
}

/** Shares of the way at which a bracket is cut, the first that balances. */
const CUTS = [0.5, 0.35, 0.65, 0.2, 0.8]

/** Narrow the bracket between two high sides until a solve from within finds the state. */
function between(setup: Setup, above: Level, below: Level): Solution | undefined {
  let [high, low] = [above, below]
  for (let step = 0; step < HALVINGS; step += 1) {
    const [a, b] = [high.solution.trial.guess, low.solution.trial.guess]
    let middle: Level | undefined
    for (const cut of CUTS) {
      const dischargePa = a.dischargePa + cut * (b.dischargePa - a.dischargePa)
      for (const near of [a, b]) {
        const found = solveFrom(setup, { ...near, dischargePa })
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
export interface Scan {
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
  for (const level of levels(setUp(asked), toPa, steps)) {
    if (level === undefined) continue
    balanced += 1
    if (before === undefined) risesAtTop = level.rises
    else if (level.rises !== before) crossings += 1
    before = level.rises
  }
  return { balanced, tried: steps + 1, crossings, risesAtTop }
}
