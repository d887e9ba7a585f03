import type { HelmholtzDerivatives } from './model.ts'

/** What term groups add to: αʳ and its derivatives with respect to δ and τ. */
export type Sums = { -readonly [K in keyof HelmholtzDerivatives]: number }

/** Adds `weight` times a part to a running sum, derivative by derivative. */
export function addWeighted(sums: Sums, weight: number, part: HelmholtzDerivatives): void {
  sums.a += weight * part.a
  sums.a_d += weight * part.a_d
  sums.a_t += weight * part.a_t
  sums.a_dd += weight * part.a_dd
  sums.a_dt += weight * part.a_dt
  sums.a_tt += weight * part.a_tt
}

/** Terms of one form, compiled: adds its share of αʳ(τ, δ) to the sums. */
export type TermGroup = (tau: number, delta: number, sums: Sums) => void

/** Exponents in order of first use, each once, and for each term its place among them. */
export function distinct(exponents: readonly number[]): {
  readonly values: Float64Array
  readonly index: Int32Array
} {
  const values = [...new Set(exponents)]
  return {
    values: Float64Array.from(values),
    index: Int32Array.from(exponents, (e) => values.indexOf(e)),
  }
}

/** Powers τ^t for a fixed list of t, remembered while τ stays the same. */
export function tauPowers(exponents: Float64Array): (tau: number) => Float64Array {
  const powers = new Float64Array(exponents.length)
  let last = Number.NaN
  return (tau) => {
    if (tau !== last) {
      const logTau = Math.log(tau)
      for (let i = 0; i < exponents.length; i += 1) {
        powers[i] = Math.exp((exponents[i] as number) * logTau)
      }
      last = tau
    }
    return powers
  }
}

/** Powers 0 to `highest` of δ, by multiplication. */
export function deltaPowers(highest: number): (delta: number) => Float64Array {
  const powers = new Float64Array(highest + 1)
  return (delta) => {
    let power = 1
    for (let i = 0; i <= highest; i += 1) {
      powers[i] = power
      power *= delta
    }
    return powers
  }
}
