import type { MixingRule } from './mixing-rules.ts'
import type { SubstanceData } from './types.ts'

/** A reducing quantity over the mole fractions with its first and second derivatives. */
export interface QuadraticForm {
  readonly value: number
  /** ∂Y/∂xᵢ. */
  readonly first: Float64Array
  /** ∂²Y/∂xᵢ∂xⱼ, row by row. */
  readonly second: Float64Array
}

/** Coefficients of one reducing function, compiled. */
export interface ReducingFunction {
  readonly own: Float64Array
  /** 2βγYᵢⱼ, row by row, above the diagonal. */
  readonly cross: Float64Array
  /** β². */
  readonly skew: Float64Array
}

/** Reducing temperature in K (Kunz and Wagner 2012, eq. 16). */
export function reducingTemperature(
  components: readonly SubstanceData[],
  rules: readonly MixingRule[],
): ReducingFunction {
  const own = components.map((c) => c.reducing.temperatureK)
  return compile(own, rules, 'T', (a, b) => Math.sqrt(a * b))
}

/** Reducing molar volume in m³/mol (Kunz and Wagner 2012, eq. 17). */
export function reducingVolume(
  components: readonly SubstanceData[],
  rules: readonly MixingRule[],
): ReducingFunction {
  const own = components.map((c) => 1 / c.reducing.densityMolPerM3)
  return compile(own, rules, 'V', (a, b) => (Math.cbrt(a) + Math.cbrt(b)) ** 3 / 8)
}

function compile(
  own: readonly number[],
  rules: readonly MixingRule[],
  which: 'T' | 'V',
  mean: (a: number, b: number) => number,
): ReducingFunction {
  const n = own.length
  const cross = new Float64Array(n * n)
  const skew = new Float64Array(n * n)
  let pair = 0
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const { betaT, gammaT, betaV, gammaV } = rules[pair++] as MixingRule
      const [beta, gamma] = which === 'T' ? [betaT, gammaT] : [betaV, gammaV]
      cross[i * n + j] = 2 * beta * gamma * mean(own[i] as number, own[j] as number)
      skew[i * n + j] = beta * beta
    }
  }
  return { own: Float64Array.from(own), cross, skew }
}

/**
 * Y = Σ xᵢ²Yᵢ + Σ 2βγYᵢⱼ f(xᵢ,xⱼ), f(a,b) = ab(a+b)/(β²a+b), with its derivatives.
 *
 * Y is homogeneous of degree 2 in x, so derivatives with respect to amounts need no Σx = 1.
 * Every xᵢ must be above 0.
 */
export function reducingAt(form: ReducingFunction, x: ArrayLike<number>): QuadraticForm {
  const n = form.own.length
  const first = new Float64Array(n)
  const second = new Float64Array(n * n)
  let value = 0
  for (let i = 0; i < n; i += 1) {
    const a = x[i] as number
    const yi = form.own[i] as number
    value += a * a * yi
    first[i] = (first[i] as number) + 2 * a * yi
    second[i * n + i] = (second[i * n + i] as number) + 2 * yi
    for (let j = i + 1; j < n; j += 1) {
      const b = x[j] as number
      const c = form.cross[i * n + j] as number
      const skew = form.skew[i * n + j] as number
      const below = skew * a + b
      const f = (a * b * (a + b)) / below
      const fa = (2 * a * b + b * b - f * skew) / below
      const fb = (a * a + 2 * a * b - f) / below
      const fab = (2 * (a + b) - fa - fb * skew) / below
      value += c * f
      first[i] = (first[i] as number) + c * fa
      first[j] = (first[j] as number) + c * fb
      second[i * n + i] = (second[i * n + i] as number) + (c * 2 * (b - fa * skew)) / below
      second[j * n + j] = (second[j * n + j] as number) + (c * 2 * (a - fb)) / below
      second[i * n + j] = c * fab
      second[j * n + i] = c * fab
    }
  }
  return { value, first, second }
}

/** The value alone: all that a fixed composition needs. */
export function reducingValue(form: ReducingFunction, x: readonly number[]): number {
  return reducingAt(form, x).value
}
