import { CalcError } from '../errors.ts'
import { GAS_CONSTANT } from '../gas-constants.ts'
import { type Phase, phaseOfDensities } from './fugacity.ts'
import { solveLinear } from './linear-solve.ts'
import type { Multifluid } from './multifluid.ts'

/** Two phases in equilibrium that together hold given amounts. */
export interface TwoPhase {
  readonly liquid: Phase
  readonly vapour: Phase
  /** m³ of each phase, for the amounts given. */
  readonly liquidVolume: number
  readonly vapourVolume: number
}

/**
 * What is held: the volume of the vessel (m³), the pressure (Pa), the share of the volume that is
 * liquid, or the share of the mass that is vapour (the quality).
 */
export type Hold =
  | { readonly volume: number }
  | { readonly pressurePa: number }
  | { readonly liquidShare: number }
  | { readonly quality: number }

const MAXIMUM_STEPS = 50
const TOLERANCE = 1e-12
const ACCEPTED = 1e-9
const DENSITY_LIMIT = 0.3

/**
 * Split amounts (mol) into liquid and vapour at a temperature in K, by Newton's method over the
 * logs of all component densities and the two volumes, from a guess near by.
 *
 * Equal fugacities and pressures to 1e-9, amounts conserved to the same. A phase that has gone
 * comes out with a volume below 0: the caller takes that as one phase.
 *
 * @throws {CalcError} `no-convergence`.
 */
export function splitPhases(
  fluid: Multifluid,
  temperatureK: number,
  amounts: Float64Array,
  hold: Hold,
  guess: TwoPhase,
): TwoPhase {
  const n = amounts.length
  const width = 2 * n + 2
  const total = amounts.reduce((a, b) => a + b, 0)
  const masses = fluid.molarMasses
  const mass = amounts.reduce((sum, a, i) => sum + a * at(masses, i), 0)
  const u = new Float64Array(width)
  for (let i = 0; i < n; i += 1) {
    u[i] = Math.log(at(guess.liquid.x, i) * guess.liquid.density)
    u[n + i] = Math.log(at(guess.vapour.x, i) * guess.vapour.density)
  }
  u[2 * n] = guess.liquidVolume
  u[2 * n + 1] = guess.vapourVolume
  let best: TwoPhase | undefined
  let bestError = ACCEPTED
  for (let step = 0; step < MAXIMUM_STEPS; step += 1) {
    const liquid = phaseOfDensities(fluid, temperatureK, u.subarray(0, n))
    const vapour = phaseOfDensities(fluid, temperatureK, u.subarray(n, 2 * n))
    const [vl, vv] = [at(u, 2 * n), at(u, 2 * n + 1)]
    const scale = vapour.density * GAS_CONSTANT * temperatureK
    const matrix = new Float64Array(width * width)
    const rest = new Float64Array(width)
    for (let i = 0; i < n; i += 1) {
      rest[i] = at(vapour.logFugacity, i) - at(liquid.logFugacity, i)
      for (let j = 0; j < n; j += 1) {
        matrix[i * width + j] = -at(liquid.slope, i * n + j)
        matrix[i * width + n + j] = at(vapour.slope, i * n + j)
      }
      const row = (n + 2 + i) * width
      const [inLiquid, inVapour] = [Math.exp(at(u, i)), Math.exp(at(u, n + i))]
      const own = at(amounts, i)
      rest[n + 2 + i] = (vl * inLiquid + vv * inVapour) / own - 1
      matrix[row + i] = (vl * inLiquid) / own
      matrix[row + n + i] = (vv * inVapour) / own
      matrix[row + 2 * n] = inLiquid / own
      matrix[row + 2 * n + 1] = inVapour / own
    }
    rest[n] = (vapour.pressurePa - liquid.pressurePa) / scale
    for (let j = 0; j < n; j += 1) {
      matrix[n * width + j] = -at(liquid.pressureSlope, j) / scale
      matrix[n * width + n + j] = at(vapour.pressureSlope, j) / scale
    }
    const last = (n + 1) * width
    if ('volume' in hold) {
      rest[n + 1] = (vl + vv) / hold.volume - 1
      matrix[last + 2 * n] = 1 / hold.volume
      matrix[last + 2 * n + 1] = 1 / hold.volume
    } else if ('liquidShare' in hold) {
      const { liquidShare } = hold
      const space = Math.abs(vl) + Math.abs(vv)
      rest[n + 1] = (vl * (1 - liquidShare) - vv * liquidShare) / space
      matrix[last + 2 * n] = (1 - liquidShare) / space
      matrix[last + 2 * n + 1] = -liquidShare / space
    } else if ('quality' in hold) {
      let perVolume = 0
      for (let i = 0; i < n; i += 1) {
        const inVapour = (at(masses, i) * Math.exp(at(u, n + i))) / mass
        perVolume += inVapour
        matrix[last + n + i] = vv * inVapour
      }
      rest[n + 1] = vv * perVolume - hold.quality
      matrix[last + 2 * n + 1] = perVolume
    } else {
      rest[n + 1] = (vapour.pressurePa - hold.pressurePa) / scale
      for (let j = 0; j < n; j += 1) matrix[last + n + j] = at(vapour.pressureSlope, j) / scale
    }
    const error = rest.reduce((worst, r) => Math.max(worst, Math.abs(r)), 0)
    if (!(error < Number.POSITIVE_INFINITY)) break
    if (error < bestError) {
      bestError = error
      best = { liquid, vapour, liquidVolume: vl, vapourVolume: vv }
      if (error < TOLERANCE) return best
    } else if (best !== undefined) return best
    const move = solveLinear(matrix, rest)
    const largest = move.subarray(0, 2 * n).reduce((m, d) => Math.max(m, Math.abs(d)), 1e-300)
    const volumes = Math.max(Math.abs(at(move, 2 * n)), Math.abs(at(move, 2 * n + 1)), 1e-300)
    const factor = Math.min(
      1,
      DENSITY_LIMIT / largest,
      (0.5 * (Math.abs(vl) + Math.abs(vv))) / volumes,
    )
    for (let k = 0; k < width; k += 1) u[k] = at(u, k) - factor * at(move, k)
  }
  if (best !== undefined) return best
  throw new CalcError(
    'no-convergence',
    `No two phases were found for ${total} mol of ${fluid.components.map((c) => c.id).join('/')} at ${temperatureK} K.`,
    { hint: 'The state may be at the critical point, or one phase only.' },
  )
}

function at(values: ArrayLike<number>, index: number): number {
  return values[index] as number
}
