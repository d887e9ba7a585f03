import type { Uncertain } from '../../../quantity/index.ts'
import {
  densityStates,
  densityUncertainty,
  type Phase,
  propertyUncertainty,
  type Refrigerant,
  saturatedDensity,
  saturationTemperature,
  twoPhaseDensity,
} from '../../../refrigerant/index.ts'

/** Where a two-phase state lies: at a temperature in K or at an absolute pressure in Pa. */
type At = Parameters<typeof twoPhaseDensity>[1]

/**
 * Densities of one refrigerant in one computation, each state solved once: fifty equal couplings cost
 * as much as one. It grows with each new state, so it must not outlive the computation.
 */
export interface Densities {
  /** Equations of state solved so far: single-phase densities and flashes. */
  readonly solves: number
  /** kg/m³ of saturated liquid or vapour at a temperature, K. */
  saturated(temperatureK: number, phase: Phase): number
  /** The same at an absolute pressure, Pa. */
  saturatedAt(pressurePa: number, phase: Phase): number
  /** kg/m³ at a temperature, K, and an absolute pressure, Pa. */
  single(temperatureK: number, pressurePa: number, phase: Phase): number
  /** kg/m³ of liquid and vapour together, by the share of the mass that is vapour. */
  twoPhase(at: At, quality: number): number
  /**
   * How far the properties themselves may be off, one standard for each phase: it moves from −1 to 1
   * and moves every density of that phase alike, by {@link Densities.share} of it.
   */
  readonly property: Readonly<Record<Phase, Uncertain>>
  /** Relative uncertainty of a density; a saturated vapour's moves with the saturation pressure too. */
  share(phase: Phase, saturatedAtK: number | undefined): number
}

export function densitiesOf(r: Refrigerant): Densities {
  const states = densityStates(r)
  const mixed = new Map<string, number>()
  const work = { solves: 0 }
  const shares: Partial<Record<Phase, number>> = {}
  const saturated = (temperatureK: number, phase: Phase) => saturatedDensity(r, temperatureK, phase)
  return {
    get solves() {
      return states.solves + work.solves
    },
    saturated,
    saturatedAt: (pressurePa, phase) =>
      saturated(saturationTemperature(r, pressurePa, phase === 'liquid' ? 'bubble' : 'dew'), phase),
    single: (temperatureK, pressurePa, phase) => states.density(temperatureK, pressurePa, phase),
    twoPhase(at, quality) {
      const key = `${JSON.stringify(at)} ${quality}`
      const known = mixed.get(key)
      if (known !== undefined) return known
      const found = twoPhaseDensity(r, at, quality, work)
      mixed.set(key, found)
      return found
    },
    property: { liquid: { si: 0, plusMinus: 1 }, vapour: { si: 0, plusMinus: 1 } },
    share(phase, saturatedAtK) {
      const own = shares[phase] ?? densityUncertainty(r, phase)
      shares[phase] = own
      if (phase === 'liquid' || saturatedAtK === undefined) return own
      return Math.hypot(own, propertyUncertainty(r, saturatedAtK, 'dew').pressure)
    },
  }
}
