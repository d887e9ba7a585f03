import { CalcError } from '../errors.ts'
import type { HelmholtzModel } from './model.ts'
import { type MolarState, stateAt } from './state.ts'

const MAX_STEPS = 60
const TOLERANCE = 1e-12
/** A step this small is accepted when rounding keeps it from shrinking further. */
const ROUNDING = 1e-9
/** Newton's steps are cut to these shares of density and temperature. */
const LONGEST_DENSITY_STEP = 0.25
const LONGEST_TEMPERATURE_STEP = 0.08

/** What is held beside the pressure, molar: J/mol of enthalpy or J/(mol·K) of entropy. */
export type Held = 'enthalpy' | 'entropy'

/** Where to start: K and mol/m³ on the side (liquid or vapour) that is sought. */
export interface StateGuess {
  readonly temperatureK: number
  readonly density: number
}

/**
 * The single-phase state with a pressure (Pa absolute) and an enthalpy or entropy (molar, on the
 * equation's own zero): Newton's method on temperature and density together, so that each step
 * costs one evaluation. It stays on the side that the guess is on.
 *
 * With h(T,ρ) and s(T,ρ): ∂h/∂T = cv + (∂p/∂T)/ρ, ∂h/∂ρ = (∂p/∂ρ − T(∂p/∂T)/ρ)/ρ,
 * ∂s/∂T = cv/T, ∂s/∂ρ = −(∂p/∂T)/ρ².
 *
 * @throws {CalcError} `no-convergence`.
 */
export function searchState(
  model: HelmholtzModel,
  pressurePa: number,
  held: Held,
  value: number,
  guess: StateGuess,
): MolarState {
  return searched(model, pressurePa, held, value, guess, TOLERANCE).state
}

/**
 * A state from which less than `enough` of a step is left, with that step.
 *
 * @param known - The state at the guess, where it was looked at already.
 */
export function searched(
  model: HelmholtzModel,
  pressurePa: number,
  held: Held,
  value: number,
  guess: StateGuess,
  enough: number,
  known?: MolarState,
): { readonly state: MolarState; readonly byT: number; readonly byRho: number } {
  let { temperatureK: t, density: rho } = guess
  const liquid = rho > model.reducingDensity
  let previous = Infinity
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const s = step === 0 && known !== undefined ? known : stateAt(model, t, rho)
    if (!(s.dpdRho > 0 && s.cv > 0)) {
      // between the phases: back towards the side that was asked for
      rho *= liquid ? 1.03 : 0.9
      continue
    }
    const perRho = s.dpdT / rho
    const toT = held === 'enthalpy' ? s.cv + perRho : s.cv / t
    const toRho = held === 'enthalpy' ? (s.dpdRho - t * perRho) / rho : -perRho / rho
    const gapP = pressurePa - s.pressurePa
    const gap = value - s[held]
    const determinant = s.dpdT * toRho - s.dpdRho * toT
    const stepT = (gapP * toRho - gap * s.dpdRho) / determinant / t
    const stepRho = (s.dpdT * gap - toT * gapP) / determinant / rho
    const size = Math.abs(stepT) + Math.abs(stepRho)
    if (!(size < Infinity)) break
    if (size <= enough || (size <= ROUNDING && size >= previous)) {
      return { state: s, byT: stepT * t, byRho: stepRho * rho }
    }
    previous = size
    const cut = Math.max(
      1,
      Math.abs(stepT) / LONGEST_TEMPERATURE_STEP,
      Math.abs(stepRho) / LONGEST_DENSITY_STEP,
    )
    t *= 1 + stepT / cut
    rho *= 1 + stepRho / cut
  }
  throw new CalcError(
    'no-convergence',
    `No state of ${model.name} with that ${held} was found at ${pressurePa} Pa.`,
    { hint: 'Check the pressure, and that one phase exists there.' },
  )
}
