import type { Phase } from '../substance/density.ts'
import { stateAt } from '../substance/state.ts'
import type { Refrigerant } from './refrigerant.ts'
import { density } from './single-phase.ts'

/** A density with its slopes, none of which needs another solve. */
export interface DensitySlopes {
  /** kg/m³ */
  readonly density: number
  /** (∂ρ/∂p)_T, kg/(m³·Pa) */
  readonly byPressure: number
  /** (∂ρ/∂T)_p, kg/(m³·K) */
  readonly byTemperature: number
}

/** Single-phase densities of one refrigerant, each state solved once. */
export interface DensityStates {
  /** Density solves so far. */
  readonly solves: number
  /** kg/m³ at K and Pa absolute. @throws {CalcError} as `density` does, anew at each call. */
  density(temperatureK: number, pressurePa: number, phase: Phase): number
  /** The same with its slopes by pressure and temperature. */
  slopes(temperatureK: number, pressurePa: number, phase: Phase): DensitySlopes
}

/**
 * Densities for one computation that meets equal states again and again: make it, use it, let it
 * go. It grows with each new state, so it must not outlive the computation.
 *
 * The slopes follow from the equation of state at the solved density by implicit differentiation:
 * (∂ρ/∂p)_T = 1/(∂p/∂ρ)_T and (∂ρ/∂T)_p = −(∂p/∂T)_ρ/(∂p/∂ρ)_T.
 */
export function densityStates(r: Refrigerant): DensityStates {
  const densities = new Map<string, number>()
  const slopes = new Map<string, DensitySlopes>()
  const densityAt = (temperatureK: number, pressurePa: number, phase: Phase) =>
    kept(densities, key(temperatureK, pressurePa, phase), () =>
      density(r, temperatureK, pressurePa, phase),
    )
  return {
    get solves() {
      return densities.size
    },
    density: densityAt,
    slopes: (temperatureK, pressurePa, phase) =>
      kept(slopes, key(temperatureK, pressurePa, phase), () => {
        const found = densityAt(temperatureK, pressurePa, phase)
        const { dpdRho, dpdT } = stateAt(r.model(), temperatureK, found / r.molarMass)
        return {
          density: found,
          byPressure: r.molarMass / dpdRho,
          byTemperature: (-r.molarMass * dpdT) / dpdRho,
        }
      }),
  }
}

const key = (temperatureK: number, pressurePa: number, phase: Phase) =>
  `${temperatureK} ${pressurePa} ${phase}`

function kept<T>(known: Map<string, T>, id: string, work: () => T): T {
  const found = known.get(id)
  if (found !== undefined) return found
  const made = work()
  known.set(id, made)
  return made
}
