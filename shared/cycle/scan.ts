import type { Solution } from './branch.ts'
import { setUp } from './setup.ts'
import { mustRise, solveFrom, solveSteady } from './solve.ts'
import type { Case } from './types.ts'

/** What a fine scan of the high side saw. */
export interface Scan {
  /** High sides at which evaporator, device and compressor agree. */
  readonly balanced: number
  readonly tried: number
  /** Between two neighbours the charge's own balance changes its sign: a steady state lies there. */
  readonly crossings: number
  /** At the highest that balances, the charge asks for more. */
  readonly risesAtTop: boolean
}

/**
 * Is there a steady state below a high side? From just above the air's own temperature up to it, in
 * even steps, the two balances that a fixed high side leaves are solved, each from the one before;
 * a steady state is where the charge fits. Slow: it confirms what the solver says, in tests.
 */
export function scanHighSide(asked: Case, toPa: number, steps = 120): Scan {
  const setup = setUp(asked)
  const { bubble } = setup.fluid.refrigerant
  const { airPa } = asked.faults
  const fromK = asked.conditions.ambientK + 1.5
  const toK = bubble.temperature(Math.min(toPa, 0.995 * setup.fluid.highestPa) - airPa)
  let before: Solution | undefined
  let sign: boolean | undefined
  let [balanced, crossings] = [0, 0]
  // downwards: at a high side that drives the flow well the balance is easiest to find
  let risesAtTop = false
  for (let step = 0; step <= steps; step += 1) {
    const dischargePa = bubble.pressure(toK + ((fromK - toK) * step) / steps) + airPa
    const start = before?.trial.guess ?? {
      suctionPa: setup.fluid.saturationPressure(asked.conditions.returnAirK - 20),
      superheatK: 6,
      stroke: asked.faults.strokeStuck ?? 1,
    }
    const found =
      solveFrom(setup, { ...start, dischargePa }, 'discharge') ??
      solveSteady(setup, { ...start, dischargePa }, 'discharge')
    if (found === undefined) continue
    balanced += 1
    const rises = mustRise(setup, found)
    if (balanced === 1) risesAtTop = rises
    if (sign !== undefined && rises !== sign) crossings += 1
    sign = rises
    before = found
  }
  return { balanced, tried: steps + 1, crossings, risesAtTop }
}
