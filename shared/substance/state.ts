import type { HelmholtzModel } from './model.ts'

/** Everything the equation says about one state. Molar, SI. */
export interface MolarState {
  readonly temperatureK: number
  /** mol/m³. */
  readonly density: number
  readonly pressurePa: number
  /** (∂p/∂ρ)_T in Pa·m³/mol. */
  readonly dpdRho: number
  /** (∂p/∂T)_ρ in Pa/K. */
  readonly dpdT: number
  /** p/(ρRT). */
  readonly compressibility: number
  /** J/mol, on the equation's own zero: only differences mean anything. */
  readonly internalEnergy: number
  /** J/mol, on the equation's own zero. */
  readonly enthalpy: number
  /** J/(mol·K), on the equation's own zero. */
  readonly entropy: number
  /** J/(mol·K). */
  readonly cv: number
  /** J/(mol·K). */
  readonly cp: number
  /** m/s. */
  readonly speedOfSound: number
}

/** Pressure in Pa at temperature in K and density in mol/m³. */
export function pressure(model: HelmholtzModel, temperatureK: number, density: number): number {
  const delta = density / model.reducingDensity
  const r = model.residual(model.reducingTemperature / temperatureK, delta)
  return density * model.gasConstant * temperatureK * (1 + delta * r.a_d)
}

/** Pressure in Pa and (∂p/∂ρ)_T in Pa·m³/mol: what a density search needs. */
export function pressureAndSlope(
  model: HelmholtzModel,
  temperatureK: number,
  density: number,
): { readonly pressurePa: number; readonly dpdRho: number } {
  const delta = density / model.reducingDensity
  const r = model.residual(model.reducingTemperature / temperatureK, delta)
  const rt = model.gasConstant * temperatureK
  return {
    pressurePa: density * rt * (1 + delta * r.a_d),
    dpdRho: rt * (1 + 2 * delta * r.a_d + delta * delta * r.a_dd),
  }
}

/** ln φ of a pure fluid (of a mixture: of the whole, as if it were one) at K and mol/m³. */
export function logFugacityCoefficient(
  model: HelmholtzModel,
  temperatureK: number,
  density: number,
): number {
  const delta = density / model.reducingDensity
  const r = model.residual(model.reducingTemperature / temperatureK, delta)
  return r.a + delta * r.a_d - Math.log1p(delta * r.a_d)
}

/**
 * Enthalpy in J/mol at temperature in K and density in mol/m³, on the equation's own zero: as
 * {@link stateAt} gives it.
 *
 * @param slope - ∂a/∂τ of the ideal-gas part, which is that of the temperature alone.
 */
export function enthalpyAt(
  model: HelmholtzModel,
  temperatureK: number,
  density: number,
  slope: number,
): number {
  const tau = model.reducingTemperature / temperatureK
  const delta = density / model.reducingDensity
  const r = model.residual(tau, delta)
  const z = 1 + delta * r.a_d
  const u = tau * (slope + r.a_t)
  return model.gasConstant * temperatureK * (u + z)
}

/** ∂a/∂τ of the ideal-gas part at K, at any density. */
export const idealSlope = (model: HelmholtzModel, temperatureK: number): number =>
  model.ideal(model.reducingTemperature / temperatureK, 1).a_t

/**
 * All properties of a single-phase state from the equation's derivatives, by the exact relations
 * between them: p from ∂a/∂ρ, s from ∂a/∂T, and what follows from those two.
 *
 * Temperature in K, density in mol/m³; the caller vouches that one phase exists there.
 */
export function stateAt(model: HelmholtzModel, temperatureK: number, density: number): MolarState {
  const tau = model.reducingTemperature / temperatureK
  const delta = density / model.reducingDensity
  const o = model.ideal(tau, delta)
  const r = model.residual(tau, delta)
  const gas = model.gasConstant
  const rt = gas * temperatureK
  const z = 1 + delta * r.a_d
  const slopeRho = 1 + 2 * delta * r.a_d + delta * delta * r.a_dd
  const slopeT = 1 + delta * r.a_d - delta * tau * r.a_dt
  const u = tau * (o.a_t + r.a_t)
  const cv = -tau * tau * (o.a_tt + r.a_tt)
  const cp = cv + (slopeT * slopeT) / slopeRho
  return {
    temperatureK,
    density,
    pressurePa: density * rt * z,
    dpdRho: rt * slopeRho,
    dpdT: density * gas * slopeT,
    compressibility: z,
    internalEnergy: rt * u,
    enthalpy: rt * (u + z),
    entropy: gas * (u - o.a - r.a),
    cv: gas * cv,
    cp: gas * cp,
    speedOfSound: Math.sqrt((rt / model.molarMass) * (slopeRho + (slopeT * slopeT) / cv)),
  }
}
