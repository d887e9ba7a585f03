/** Where a number comes from, and how far that was checked. */
interface EquationSource {
  /** Authors, title, journal, volume, pages, year. */
  readonly citation: string
  readonly doi?: string
  /** 'verified' when the paper's own text was read, 'secondary' when another account of it was. */
  readonly mark: string
  /** The collection that the coefficients were transcribed from. */
  readonly transcribedFrom: string
}

/** Σ n δ^d τ^t, with exp(−δ^l) where l > 0. */
export interface PowerTerms {
  readonly n: readonly number[]
  readonly d: readonly number[]
  readonly t: readonly number[]
  readonly l: readonly number[]
}

/** Σ n δ^d τ^t exp(−η(δ−ε)² − β(τ−γ)²). */
export interface GaussianTerms {
  readonly n: readonly number[]
  readonly d: readonly number[]
  readonly t: readonly number[]
  readonly eta: readonly number[]
  readonly epsilon: readonly number[]
  readonly beta: readonly number[]
  readonly gamma: readonly number[]
}

/** Σ n δ^d τ^t exp(−δ^l) exp(−τ^m); l or m of 0 means without that factor. */
export interface ExponentialTerms {
  readonly n: readonly number[]
  readonly d: readonly number[]
  readonly t: readonly number[]
  readonly l: readonly number[]
  readonly m: readonly number[]
}

/**
 * Σ n Δ^b δ ψ, Δ = θ² + B[(δ−1)²]^a, θ = (1−τ) + A[(δ−1)²]^(1/(2β)),
 * ψ = exp(−C(δ−1)² − D(τ−1)²): the critical-region terms of Span and Wagner.
 */
export interface NonAnalyticTerms {
  readonly n: readonly number[]
  readonly a: readonly number[]
  readonly b: readonly number[]
  readonly beta: readonly number[]
  readonly A: readonly number[]
  readonly B: readonly number[]
  readonly C: readonly number[]
  readonly D: readonly number[]
}

export interface ResidualTerms {
  readonly power?: PowerTerms
  readonly gaussian?: GaussianTerms
  readonly exponential?: ExponentialTerms
  readonly nonAnalytic?: NonAnalyticTerms
}

/** α⁰ = ln δ + a1 + a2 τ + logTau ln τ + the lists below. */
export interface IdealTerms {
  readonly a1: number
  readonly a2: number
  readonly logTau: number
  /** Σ n τ^t. */
  readonly power?: {
    readonly n: readonly number[]
    readonly t: readonly number[]
  }
  /** Σ n ln(1 − exp(−t τ)), t = θ/T_r. */
  readonly planckEinstein?: {
    readonly n: readonly number[]
    readonly t: readonly number[]
  }
  /** Heat capacity c⁰p/R = Σ c T^t (T in K), integrated from fromK. */
  readonly heatCapacity?: {
    readonly c: readonly number[]
    readonly t: readonly number[]
    readonly fromK: number
  }
}

/** One pure substance: what `data/substances/<id>.json` holds. */
export interface SubstanceData {
  /** ASHRAE 34 designation with its hyphen, or the chemical name where there is none. */
  readonly id: string
  readonly chemicalName: string
  readonly cas: string
  /** kg/mol. */
  readonly molarMass: number
  /** J/(mol·K), as used in fitting this equation. */
  readonly gasConstant: number
  readonly acentricFactor: number
  readonly reducing: {
    readonly temperatureK: number
    readonly densityMolPerM3: number
  }
  readonly critical: {
    readonly temperatureK: number
    readonly pressurePa: number
    readonly densityMolPerM3: number
  }
  readonly triple: { readonly temperatureK: number }
  readonly valid: {
    readonly minimumTemperatureK: number
    readonly maximumTemperatureK: number
    readonly maximumPressurePa: number
  }
  readonly ideal: IdealTerms
  readonly residual: ResidualTerms
  readonly source: EquationSource
}
