import type { MolarState } from './state.ts'
import { searched, type searchState } from './state-search.ts'

/** The square of a step this small is lost in rounding. */
const LAST_STEP = 3e-7

/** What a search tells that does not look at its last step. */
export type FoundState = Pick<
  MolarState,
  'temperatureK' | 'density' | 'pressurePa' | 'enthalpy' | 'entropy'
>

/**
 * As `searchState`, for whoever asks thousands of times: the last step is taken by the slopes
 * before it rather than looked at. The same to some twelve digits.
 */
export function findState(...asked: Parameters<typeof searchState>): FoundState {
  const { state, byT, byRho } = searched(...asked, LAST_STEP)
  const { temperatureK: t, density: rho, dpdT, dpdRho, cv } = state
  const perRho = dpdT / rho
  return {
    temperatureK: t + byT,
    density: rho + byRho,
    pressurePa: state.pressurePa + dpdT * byT + dpdRho * byRho,
    enthalpy: state.enthalpy + (cv + perRho) * byT + ((dpdRho - t * perRho) / rho) * byRho,
    entropy: state.entropy + (cv / t) * byT - (perRho / rho) * byRho,
  }
}
