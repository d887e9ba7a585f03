import { density, type Phase } from './density.ts'
import type { HelmholtzModel } from './model.ts'
import { type MolarState, stateAt } from './state.ts'
import { type Held, type StateGuess, searched } from './state-search.ts'

/** The square of a step this small is lost in rounding. */
const LAST_STEP = 3e-7
/** Longest step in density at an even temperature, and how many, before a search in a bracket is the safer one. */
const LONGEST_STEP = 0.25
const MOST_STEPS = 8

/** What a search tells that does not look at its last step. */
export interface FoundState
  extends Pick<MolarState, 'temperatureK' | 'density' | 'pressurePa' | 'enthalpy' | 'entropy'> {
  /** The state that was looked at last: what a next search near by starts from without another look. */
  readonly from: MolarState
}

/**
 * As `searchState`, for whoever asks thousands of times: the last step is taken by the slopes
 * before it rather than looked at. The same to some twelve digits.
 *
 * @param known - A state near by that was looked at: the first step starts from it, and where that is
 *   the last one nothing is looked at.
 */
export function findState(
  model: HelmholtzModel,
  pressurePa: number,
  held: Held,
  value: number,
  guess: StateGuess,
  known?: MolarState,
): FoundState {
  const start = known ?? guess
  const { state, byT, byRho } = searched(model, pressurePa, held, value, start, LAST_STEP, known)
  return moved(state, byT, byRho)
}

/**
 * The same of one phase at a temperature (K) and a pressure (Pa absolute); as `density` where nothing
 * near by is known.
 */
export function findAtTemperature(
  model: HelmholtzModel,
  temperatureK: number,
  pressurePa: number,
  phase: Phase,
  guess: StateGuess,
  known?: MolarState,
): FoundState {
  let state = known?.temperatureK === temperatureK ? known : undefined
  for (let step = 0; state !== undefined && step < MOST_STEPS; step += 1) {
    const byRho: number = (pressurePa - state.pressurePa) / state.dpdRho
    const size = Math.abs(byRho) / state.density
    if (size <= LAST_STEP) return moved(state, 0, byRho)
    const next =
      size <= LONGEST_STEP ? stateAt(model, temperatureK, state.density + byRho) : undefined
    state = next !== undefined && next.dpdRho > 0 ? next : undefined
  }
  const rho = density(model, temperatureK, pressurePa, phase, guess.density)
  return moved(stateAt(model, temperatureK, rho), 0, 0)
}

/** By small steps in temperature, K, and density, mol/m³, along the slopes of a state. */
function moved(from: MolarState, byT: number, byRho: number): FoundState {
  const { temperatureK: t, density: rho, dpdT, dpdRho, cv } = from
  const perRho = dpdT / rho
  return {
    temperatureK: t + byT,
    density: rho + byRho,
    pressurePa: from.pressurePa + dpdT * byT + dpdRho * byRho,
    enthalpy: from.enthalpy + (cv + perRho) * byT + ((dpdRho - t * perRho) / rho) * byRho,
    entropy: from.entropy + (cv / t) * byT - (perRho / rho) * byRho,
    from,
  }
}
