import { deltaPowers, distinct, type TermGroup, tauPowers } from './term-group.ts'
import type { GaussianTerms } from './types.ts'

/** Σ n δ^d τ^t exp(−η(δ−ε)² − β(τ−γ)²): the bell-shaped terms near the critical point. Whole d. */
export function gaussianGroup(terms: GaussianTerms): TermGroup {
  const count = terms.n.length
  const n = Float64Array.from(terms.n)
  const d = Int32Array.from(terms.d)
  const t = Float64Array.from(terms.t)
  const eta = Float64Array.from(terms.eta)
  const epsilon = Float64Array.from(terms.epsilon)
  const beta = Float64Array.from(terms.beta)
  const gamma = Float64Array.from(terms.gamma)
  const { values, index } = distinct(terms.t)
  const powersOfTau = tauPowers(values)
  const powersOfDelta = deltaPowers(Math.max(...d))

  return (tau, delta, sums) => {
    const tp = powersOfTau(tau)
    const dp = powersOfDelta(delta)
    for (let i = 0; i < count; i += 1) {
      const di = d[i] as number
      const ti = t[i] as number
      const fromEpsilon = delta - (epsilon[i] as number)
      const fromGamma = tau - (gamma[i] as number)
      const byEta = (eta[i] as number) * fromEpsilon
      const byBeta = (beta[i] as number) * fromGamma
      const bell = Math.exp(-byEta * fromEpsilon - byBeta * fromGamma)
      const term = (n[i] as number) * (dp[di] as number) * (tp[index[i] as number] as number) * bell
      const u = di / delta - 2 * byEta
      const v = ti / tau - 2 * byBeta
      sums.a += term
      sums.a_d += term * u
      sums.a_t += term * v
      sums.a_dd += term * (u * u - di / (delta * delta) - 2 * (eta[i] as number))
      sums.a_dt += term * u * v
      sums.a_tt += term * (v * v - ti / (tau * tau) - 2 * (beta[i] as number))
    }
  }
}
