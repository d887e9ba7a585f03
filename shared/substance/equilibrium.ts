import { CalcError } from '../errors.ts'
import { GAS_CONSTANT } from '../gas-constants.ts'
import { type Phase, phaseAt, phaseOfDensities, reducingOf } from './fugacity.ts'
import { solveLinear } from './linear-solve.ts'
import type { Multifluid } from './multifluid.ts'

/** `bubble`: the given composition is the liquid; `dew`: it is the vapour. */
export type Line = 'bubble' | 'dew'

/** A point of the bubble or dew line: two phases in equilibrium, one of them as given. */
export interface SaturationPoint {
  readonly line: Line
  readonly temperatureK: number
  readonly pressurePa: number
  readonly liquid: Phase
  readonly vapour: Phase
  /** Largest |ln f′ᵢ − ln f″ᵢ| left. */
  readonly fugacityError: number
  /** Unknowns: ln T, ln ρ of the given phase, ln of each component's density in the other. */
  readonly unknowns: Float64Array
  /** d(unknowns)/d(ln T) along the line. */
  readonly tangent: Float64Array
}

/** The one condition that picks the point on its line. */
export type Condition =
  | { readonly temperatureK: number }
  | { readonly pressurePa: number }
  /** ln(ρ of the given phase / ρ of the other): stays decisive up to the critical point. */
  | { readonly contrast: number }

const MAXIMUM_STEPS = 60
/** ln f and ln p are compared to this: a thousandth of what is promised. */
const TOLERANCE = 1e-12
/** Rounding in a cold liquid may keep the last steps above TOLERANCE; this is promised. */
const ACCEPTED = 1e-9
/** Largest change of ln T, and of ln ρ, in one step. */
const TEMPERATURE_LIMIT = 0.02
const DENSITY_LIMIT = 0.3
/** Below this |ln ρ/ρ| both phases have become one: the trivial root. */
const TRIVIAL = 1e-4

/**
 * Find a bubble or dew point by Newton's method over ln T and the logs of the densities, from a
 * first guess near by.
 *
 * Fugacities and pressures of both phases are equal to 1e-9 at the answer. With the contrast as
 * condition the trivial root (both phases alike) is no solution; with T or p it is refused.
 *
 * @param guess - ln T, ln ρ of the given phase, ln of each component density in the other.
 * @throws {CalcError} `no-convergence`.
 */
export function saturationPoint(
  fluid: Multifluid,
  composition: Float64Array,
  line: Line,
  condition: Condition,
  guess: Float64Array,
): SaturationPoint {
  const n = composition.length
  const u = Float64Array.from(guess)
  const reducing = reducingOf(fluid, composition)
  let best: SaturationPoint | undefined
  for (let step = 0; step < MAXIMUM_STEPS; step += 1) {
    const given = phaseAt(fluid, Math.exp(at(u, 0)), Math.exp(at(u, 1)), composition, reducing)
    const other = phaseOfDensities(fluid, Math.exp(at(u, 0)), u.subarray(2))
    const matrix = new Float64Array((n + 2) ** 2)
    const rest = equations(given, other, condition, matrix)
    const error = rest.reduce((worst, r) => Math.max(worst, Math.abs(r)), 0)
    if (!(error < Number.POSITIVE_INFINITY)) break
    if (error < ACCEPTED && (best === undefined || error < best.fugacityError)) {
      best = point(line, given, other, u, tangentOf(given, other, condition), error)
      if (error < TOLERANCE) return settled(best)
    } else if (best !== undefined) {
      return settled(best)
    }
    const move = solveLinear(matrix, rest)
    const scale = Math.min(
      1,
      TEMPERATURE_LIMIT / Math.max(Math.abs(at(move, 0)), 1e-300),
      DENSITY_LIMIT / Math.max(...move.subarray(1).map(Math.abs), 1e-300),
    )
    for (let k = 0; k < u.length; k += 1) u[k] = at(u, k) - scale * at(move, k)
  }
  if (best !== undefined) return settled(best)
  throw new CalcError(
    'no-convergence',
    `No ${line} point was found for ${names(fluid)} at ${where(condition)}.`,
    { hint: 'Stay well below the critical point, or give a state nearer to a known one.' },
  )
}

/** The answer, unless it is a root that no mixture shows: both phases alike, turned about or unstable. */
function settled(found: SaturationPoint): SaturationPoint {
  const contrast = Math.log(found.liquid.density / found.vapour.density)
  const stable = [found.liquid, found.vapour].every(
    (phase) => phase.pressureSlope.reduce((a, b) => a + b, 0) > 0,
  )
  if (contrast > TRIVIAL && stable) return found
  throw new CalcError(
    'no-convergence',
    `The ${found.line} search ended with ${stable ? 'both phases alike' : 'an unstable phase'}.`,
    { hint: 'The state is at or above the critical point, or the first guess was too far off.' },
  )
}

/** Left sides of the equations, with the Jacobian written into `matrix` (n+2 by n+2). */
function equations(
  given: Phase,
  other: Phase,
  condition: Condition,
  matrix: Float64Array,
): Float64Array {
  const n = given.x.length
  const width = n + 2
  const rest = new Float64Array(width)
  // pressures are compared on the scale of the thinner phase's ideal pressure
  const scale = Math.min(idealPressure(given), idealPressure(other))
  for (let i = 0; i < n; i += 1) {
    rest[i] = at(other.logFugacity, i) - at(given.logFugacity, i)
    matrix[i * width] = at(other.slopeT, i) - at(given.slopeT, i)
    let along = 0
    for (let j = 0; j < n; j += 1) {
      along += at(given.slope, i * n + j)
      matrix[i * width + 2 + j] = at(other.slope, i * n + j)
    }
    matrix[i * width + 1] = -along
  }
  const alongGiven = given.pressureSlope.reduce((a, b) => a + b, 0)
  rest[n] = (other.pressurePa - given.pressurePa) / scale
  matrix[n * width] = (other.pressureSlopeT - given.pressureSlopeT) / scale
  matrix[n * width + 1] = -alongGiven / scale
  for (let j = 0; j < n; j += 1) matrix[n * width + 2 + j] = at(other.pressureSlope, j) / scale
  const last = (n + 1) * width
  if ('temperatureK' in condition) {
    rest[n + 1] = Math.log(given.temperatureK / condition.temperatureK)
    matrix[last] = 1
  } else if ('pressurePa' in condition) {
    // the vapour's pressure: the liquid's swings wildly on the way
    const thin = given.density < other.density ? given : other
    rest[n + 1] = Math.log(
      Math.max(thin.pressurePa, 1e-3 * idealPressure(thin)) / condition.pressurePa,
    )
    matrix[last] = thin.pressureSlopeT / thin.pressurePa
    if (thin === given) matrix[last + 1] = alongGiven / thin.pressurePa
    else
      for (let j = 0; j < n; j += 1)
        matrix[last + 2 + j] = at(other.pressureSlope, j) / thin.pressurePa
  } else {
    rest[n + 1] = Math.log(given.density / other.density) - condition.contrast
    matrix[last + 1] = 1
    for (let j = 0; j < n; j += 1) matrix[last + 2 + j] = -at(other.x, j)
  }
  return rest
}

/** Direction of the line: the change of all unknowns with ln T. */
function tangentOf(given: Phase, other: Phase, condition: Condition): Float64Array {
  const width = given.x.length + 2
  const matrix = new Float64Array(width * width)
  equations(given, other, condition, matrix)
  const unit = new Float64Array(width)
  unit[width - 1] = 1
  const along = solveLinear(matrix, unit)
  const perLogT = at(along, 0)
  return along.map((d) => d / perLogT)
}

function point(
  line: Line,
  given: Phase,
  other: Phase,
  u: Float64Array,
  tangent: Float64Array,
  fugacityError: number,
): SaturationPoint {
  const [liquid, vapour] = line === 'bubble' ? [given, other] : [other, given]
  return {
    line,
    temperatureK: given.temperatureK,
    pressurePa: vapour.pressurePa,
    liquid,
    vapour,
    fugacityError,
    unknowns: Float64Array.from(u),
    tangent,
  }
}

function idealPressure(phase: Phase): number {
  return phase.density * GAS_CONSTANT * phase.temperatureK
}

function where(condition: Condition): string {
  if ('temperatureK' in condition) return `${condition.temperatureK} K`
  if ('pressurePa' in condition) return `${condition.pressurePa} Pa`
  return `a contrast of ${condition.contrast}`
}

function names(fluid: Multifluid): string {
  return fluid.components.map((c) => c.id).join('/')
}

function at(values: ArrayLike<number>, index: number): number {
  return values[index] as number
}
