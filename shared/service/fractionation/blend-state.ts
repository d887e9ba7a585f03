import { saturationPoint } from '../../substance/equilibrium.ts'
import type { Multifluid } from '../../substance/multifluid.ts'
import { pointAt } from '../../substance/saturation-line.ts'

/** How a composition boils at a temperature, and how far a chart for the fresh blend is off. */
export interface BlendState {
  readonly bubblePa: number
  readonly dewPa: number
  /** Bubble temperature at the fresh blend's bubble pressure less that of the fresh blend, K. */
  readonly bubbleShiftK: number
  /** The same of the dew line. */
  readonly dewShiftK: number
}

export interface Boiling {
  readonly bubblePa: number
  readonly dewPa: number
}

/**
 * Bubble and dew pressure in Pa of a composition (mole fractions) at a temperature in K.
 *
 * @throws {CalcError} `no-convergence`, above the critical point among others.
 */
export function boiling(fluid: Multifluid, x: Float64Array, temperatureK: number): Boiling {
  return {
    bubblePa: pointAt(fluid, x, 'bubble', temperatureK).pressurePa,
    dewPa: pointAt(fluid, x, 'dew', temperatureK).pressurePa,
  }
}

/**
 * Boiling of a composition beside the fresh blend's at the same temperature in K.
 *
 * A positive shift means it boils hotter at the same pressure: the fresh blend's chart then shows
 * too much superheat (dew) or too little subcooling (bubble).
 */
export function besideFresh(
  fluid: Multifluid,
  x: Float64Array,
  temperatureK: number,
  fresh: Boiling,
): BlendState {
  const shift = (line: 'bubble' | 'dew', pressurePa: number) => {
    const near = pointAt(fluid, x, line, temperatureK)
    const there = saturationPoint(fluid, x, line, { pressurePa }, near.unknowns)
    return { pressurePa: near.pressurePa, shiftK: there.temperatureK - temperatureK }
  }
  const bubble = shift('bubble', fresh.bubblePa)
  const dew = shift('dew', fresh.dewPa)
  return {
    bubblePa: bubble.pressurePa,
    dewPa: dew.pressurePa,
    bubbleShiftK: bubble.shiftK,
    dewShiftK: dew.shiftK,
  }
}
