import { GAS_CONSTANT } from '../gas-constants.ts'
import type { Line } from './equilibrium.ts'
import type { Multifluid } from './multifluid.ts'
import type { SubstanceData } from './types.ts'

/**
 * Rough bubble or dew point at a temperature in K: ideal liquid and vapour, pressures by Wilson's
 * rule, liquid volumes by Rackett's. Good enough to start from well below the critical point.
 *
 * Returns ln T, ln ρ of the given phase and ln of each component density in the other.
 *
 * @see G. Wilson, 65th National Meeting of the American Institute of Chemical Engineers,
 * Cleveland, 1969 (from memory; the converged answer does not depend on it).
 */
export function firstGuess(
  fluid: Multifluid,
  z: Float64Array,
  line: Line,
  temperatureK: number,
): Float64Array {
  const pressures = fluid.components.map((c) => wilsonPressure(c, temperatureK))
  const rt = GAS_CONSTANT * temperatureK
  if (line === 'bubble') {
    const partial = pressures.map((p, i) => p * (z[i] as number))
    const vapour = partial.map((p) => Math.log(p / rt))
    return Float64Array.of(
      Math.log(temperatureK),
      Math.log(liquid(fluid, z, temperatureK)),
      ...vapour,
    )
  }
  const shares = pressures.map((p, i) => (z[i] as number) / p)
  const pressure = 1 / shares.reduce((a, b) => a + b, 0)
  const x = Float64Array.from(shares, (s) => s * pressure)
  const density = liquid(fluid, x, temperatureK)
  return Float64Array.of(
    Math.log(temperatureK),
    Math.log(pressure / rt),
    ...x.map((xi) => Math.log(xi * density)),
  )
}

/** Vapour pressure in Pa by Wilson's rule; a rough one, from the critical point and the acentric factor. */
export function wilsonPressure(c: SubstanceData, temperatureK: number): number {
  const slope = 5.373 * (1 + c.acentricFactor)
  return c.critical.pressurePa * Math.exp(slope * (1 - c.critical.temperatureK / temperatureK))
}

/** mol/m³; above a component's critical point its critical volume stands in. */
function liquid(fluid: Multifluid, x: Float64Array, temperatureK: number): number {
  const volume = fluid.components.reduce((sum, c, i) => {
    const { temperatureK: tc, pressurePa: pc, densityMolPerM3: rhoC } = c.critical
    const zc = pc / (rhoC * GAS_CONSTANT * tc)
    const power = Math.max(0, 1 - temperatureK / tc) ** (2 / 7)
    return sum + ((x[i] as number) / rhoC) * zc ** power
  }, 0)
  return 1 / volume
}
