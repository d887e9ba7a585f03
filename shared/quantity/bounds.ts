import type { Kind } from './kinds.ts'

/**
 * Smallest and largest figure of each kind that anybody in the trade meets, SI, both included.
 *
 * Wide on purpose: a field that knows better says so itself. They keep slips of the pen (99999999 lb)
 * and numbers that overflow on the way out of every calculation. Common sense, no source.
 */
export const TRADE_BOUNDS: Readonly<Record<Kind, readonly [low: number, high: number]>> = {
  temperature: [100, 1_000],
  temperatureDifference: [-900, 900],
  gaugePressure: [-2e5, 1e8],
  absolutePressure: [0, 1e8],
  barometricPressure: [0, 2e5],
  pressureDifference: [-1e8, 1e8],
  mass: [0, 1e5],
  volume: [0, 1e3],
  length: [0, 1e4],
  altitude: [-5e4, 5e4],
  duration: [0, 1e10],
  density: [0, 3e4],
  massPerLength: [0, 1e3],
  volumeFlow: [0, 1e3],
  massFlow: [0, 1e3],
  leakRate: [0, 1e6],
  specificEnergy: [-1e8, 1e8],
  specificEntropy: [-1e6, 1e6],
  speed: [-1e4, 1e4],
  power: [0, 1e9],
  fraction: [0, 100],
}
