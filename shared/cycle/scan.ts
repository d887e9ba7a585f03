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

const COARSE = 24
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

/** Halve the way between two high sides until a solve from there finds the state. */
function between(setup: Setup, above: Level, below: Level): Solution | undefined {
  let [high, low] = [above, below]
  for (let step = 0; step < HALVINGS; step += 1) {
    const [a, b] = [high.solution.trial.guess, low.solution.trial.guess]
    const dischargePa = (a.dischargePa + b.dischargePa) / 2
    for (const near of [a, b]) {
      const found = solveFrom(setup, { ...near, dischargePa })
      if (found !== undefined) return found
    }
    const middle = solveFrom(setup, { ...a, dischargePa }, 'discharge')
    if (middle === undefined) return undefined
    const level = { solution: middle, rises: mustRise(setup, middle) }
    if (level.rises) low = level
    else high = level
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
