/**
 * A reduced Helmholtz energy and its derivatives with respect to δ = ρ/ρ_r and τ = T_r/T,
 * all at one point. Dimensionless: α = A/(R T).
 */
export interface HelmholtzDerivatives {
  readonly a: number
  readonly a_d: number
  readonly a_t: number
  readonly a_dd: number
  readonly a_dt: number
  readonly a_tt: number
}

/** A part of α as a function of τ and δ. */
export type HelmholtzPart = (tau: number, delta: number) => HelmholtzDerivatives

/** A fluid of fixed composition, pure or mixed. Molar units inside (mol/m³), SI. */
export interface HelmholtzModel {
  readonly name: string
  /** kg/mol. */
  readonly molarMass: number
  /** J/(mol·K): belongs to the equation, which was fitted with it, not to the program. */
  readonly gasConstant: number
  /** K. */
  readonly reducingTemperature: number
  /** mol/m³. */
  readonly reducingDensity: number
  /** Ideal-gas part α⁰ with its derivatives; δ and τ above 0. */
  ideal(tau: number, delta: number): HelmholtzDerivatives
  /** Residual part αʳ with its derivatives; δ and τ above 0. */
  residual(tau: number, delta: number): HelmholtzDerivatives
}
