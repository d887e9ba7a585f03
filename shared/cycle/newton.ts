import { attempt } from '../substance/attempt.ts'
import { solveLinear } from '../substance/linear-solve.ts'

/** Residuals at a point, `undefined` where the point is no state that a machine can be in. */
export type Residuals = (at: Float64Array) => Float64Array | undefined

interface NewtonResult {
  readonly at: Float64Array
  /** Largest residual. */
  readonly error: number
  readonly converged: boolean
  readonly iterations: number
  readonly evaluations: number
  /** As it stood at the end, for a solve near by. */
  readonly jacobian: Float64Array | undefined
}

const MOST_ITERATIONS = 25
/** Aimed at, and accepted where rounding stops the last steps. */
const AIM = 1e-11
const ACCEPTED = 1e-8
/** Aimed at near a solve that is there: its digits serve differences and rows of a sweep. */
const AIM_NEAR = 1e-9
const DIFFERENCE = 2e-7
const MOST_HALVINGS = 7
/** Given up when so many iterations have not brought the error down to this share. */
const PATIENCE = 6
const PROGRESS = 0.5
/** Sooner where two fresh Jacobians in a row left this share: it lies on a corner, or where there is no root. */
const STUCK = 0.98
/** An old Jacobian, corrected, is kept while a step leaves less than this share of the error. */
const GOOD_STEP = 0.25

/**
 * Damped Newton over a few scaled unknowns: differences for the Jacobian, then Broyden's correction
 * of it as long as the steps are good; a step is cut to `limits` and halved while it makes matters
 * worse or leads out of the domain. Bounded; the caller looks at `converged`.
 *
 * @param near - The Jacobian of a solve near by: as long as its steps are good no differences are taken.
 */
export function newton(
  residuals: Residuals,
  start: Float64Array,
  limits: readonly number[],
  near?: Float64Array,
): NewtonResult | undefined {
  let evaluations = 0
  const evaluate: Residuals = (x) => {
    evaluations += 1
    const r = residuals(x)
    return r !== undefined && allFinite(r) ? r : undefined
  }
  let x: Float64Array = Float64Array.from(start)
  const first = evaluate(x)
  if (first === undefined) return undefined
  let r: Float64Array = first
  let error = largest(r)
  let jacobian: Float64Array | undefined = near && Float64Array.from(near)
  let fresh = false
  let borrowed = near !== undefined
  let iterations = 0
  const history: number[] = []
  const aim = near === undefined ? AIM : AIM_NEAR
  for (; iterations < MOST_ITERATIONS && error > aim; iterations += 1) {
    history.push(error)
    const before = history.at(-1 - PATIENCE)
    if (before !== undefined && error > PROGRESS * before) break
    const lately = history.at(-3)
    if (jacobian === undefined && lately !== undefined && error > STUCK * lately) break
    if (jacobian === undefined) {
      jacobian = differences(evaluate, x, r)
      fresh = true
      borrowed = false
      if (jacobian === undefined) break
    }
    const step = attempt(() =>
      solveLinear(
        Float64Array.from(jacobian as Float64Array),
        (r as Float64Array).map((v) => -v),
      ),
    )
    if (step === undefined) {
      if (fresh) break
      jacobian = undefined
      continue
    }
    let factor = 1
    for (let i = 0; i < step.length; i += 1) {
      const most = (limits[i] as number) / Math.max(Math.abs(step[i] as number), 1e-300)
      if (most < factor) factor = most
    }
    let taken: { x: Float64Array; r: Float64Array; error: number } | undefined
    for (let halving = 0; halving <= MOST_HALVINGS; halving += 1) {
      const trial = Float64Array.from(x)
      for (let i = 0; i < trial.length; i += 1) {
        trial[i] = (trial[i] as number) + factor * (step[i] as number)
      }
      const found = evaluate(trial)
      if (found !== undefined) {
        const size = largest(found)
        if (taken === undefined || size < taken.error) taken = { x: trial, r: found, error: size }
        if (size < error * (1 - 0.05 * factor)) break
      }
      // another Jacobian is cheaper than to find out how far a borrowed one holds
      if (borrowed) break
      factor /= 2
    }
    if (taken === undefined || (taken.error >= error && !fresh)) {
      if (fresh) break
      jacobian = undefined
      continue
    }
    // a fresh Jacobian whose every cut makes matters worse: a corner, or no root this way
    if (taken.error >= error * 1.5) break
    const good = taken.error < GOOD_STEP * error
    if (good)
      broyden(
        jacobian,
        taken.x.map((v, i) => v - (x[i] as number)),
        taken.r,
        r,
      )
    const stalled = taken.error >= error && error <= ACCEPTED
    x = taken.x
    r = taken.r
    error = taken.error
    if (stalled) break
    if (good) fresh = false
    else jacobian = undefined
  }
  return { at: x, error, converged: error <= ACCEPTED, iterations, evaluations, jacobian }
}

function differences(
  evaluate: Residuals,
  x: Float64Array,
  r: Float64Array,
): Float64Array | undefined {
  const n = x.length
  const jacobian = new Float64Array(n * n)
  const beside = (j: number, step: number) => {
    const at = Float64Array.from(x)
    at[j] = (at[j] as number) + step
    return evaluate(at)
  }
  for (let j = 0; j < n; j += 1) {
    let step = DIFFERENCE
    let moved = beside(j, step)
    if (moved === undefined) {
      step = -step
      moved = beside(j, step)
    }
    if (moved === undefined) return undefined
    for (let i = 0; i < n; i += 1) {
      jacobian[i * n + j] = ((moved[i] as number) - (r[i] as number)) / step
    }
  }
  return jacobian
}

/** J + (r₊ − r − J s) sᵀ/(sᵀs). */
function broyden(
  jacobian: Float64Array,
  step: Float64Array,
  after: Float64Array,
  before: Float64Array,
): void {
  const n = step.length
  const square = step.reduce((sum, v) => sum + v * v, 0)
  for (let i = 0; i < n; i += 1) {
    let gap = (after[i] as number) - (before[i] as number)
    for (let j = 0; j < n; j += 1) gap -= (jacobian[i * n + j] as number) * (step[j] as number)
    for (let j = 0; j < n; j += 1) {
      jacobian[i * n + j] = (jacobian[i * n + j] as number) + (gap * (step[j] as number)) / square
    }
  }
}

function largest(r: Float64Array): number {
  let most = 0
  for (let i = 0; i < r.length; i += 1) most = Math.max(most, Math.abs(r[i] as number))
  return most
}

function allFinite(r: Float64Array): boolean {
  for (let i = 0; i < r.length; i += 1) if (!Number.isFinite(r[i])) return false
  return true
}
