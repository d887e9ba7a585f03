import type { Fluid, Point, Saturation } from './fluid.ts'
import type { Compressor } from './types.ts'

/** What the compressor does with what it is given. */
export interface Compression {
  /** kg/s delivered. */
  readonly flow: number
  /** The same at an even entropy, and as it leaves. */
  readonly isentropic: Point
  readonly discharge: Point
  /** W taken from the shaft. */
  readonly power: number
  /** W given off by its shell. */
  readonly shellHeat: number
  /** Share of the displacement that is delivered, at the density of the suction. */
  readonly volumetricEfficiency: number
  readonly isentropicEfficiency: number
}

/** Lowest isentropic efficiency as a share of the best: the law below would fall without end. */
const LEAST_EFFICIENCY = 0.4

/**
 * A positive-displacement compressor.
 *
 * Delivered volume: the gas left in the clearance C expands back along the suction's own entropy
 * and takes room, η = 1 − C(ρ_2s/ρ_1 − 1): the textbook form 1 − C[(p₂/p₁)^(1/κ) − 1] without its
 * ideal gas. Less throttling (∝ speed²) and leakage back, which is given at the nominal speed and
 * weighs more the slower it turns. What leaks is compressed again: it costs work and heats the gas.
 * Coefficients are the machine's, and invented: no calorimeter stands behind them.
 */
export function compress(
  compressor: Compressor,
  fluid: Fluid,
  suction: Point,
  at: Saturation,
  running: {
    readonly speed: number
    readonly stroke: number
    readonly leakage: number
    readonly volumetric: number
    readonly isentropic: number
  },
): Compression {
  const isentropic = fluid.withEntropy(suction.entropy, at, 'isentropic')
  const slowness = compressor.nominalSpeed / running.speed
  const lost = 1 - (1 - compressor.leakage) * (1 - running.leakage)
  const back = (slowness * lost) / (1 - lost)
  const filling =
    (1 - compressor.clearance * (isentropic.density / suction.density - 1)) *
    (1 - compressor.throttling / (slowness * slowness)) *
    running.volumetric
  const swept = compressor.displacement * running.speed * running.stroke * suction.density
  const taken = swept * filling
  const flow = taken / (1 + back)
  const efficiency =
    efficiencyAt(compressor, at.pressurePa / suction.pressurePa) * running.isentropic
  const work = ((isentropic.enthalpy - suction.enthalpy) / efficiency) * (1 + back)
  const enthalpy = suction.enthalpy + work * (1 - compressor.shellLoss)
  return {
    flow,
    isentropic,
    discharge: fluid.withEnthalpy(enthalpy, at, 'discharge'),
    power: flow * work,
    shellHeat: flow * work * compressor.shellLoss,
    volumetricEfficiency: flow / swept,
    isentropicEfficiency: efficiency,
  }
}

/** Falls with the square of ln(ratio/best ratio), smoothly towards its least. */
function efficiencyAt({ efficiency }: Compressor, ratio: number): number {
  const { best, atRatio, fall } = efficiency
  const away = Math.log(ratio / atRatio)
  return best * (LEAST_EFFICIENCY + (1 - LEAST_EFFICIENCY) / (1 + fall * away * away))
}
