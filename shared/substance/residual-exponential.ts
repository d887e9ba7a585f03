import { deltaPowers, distinct, type TermGroup, tauPowers } from './term-group.ts'
import type { ExponentialTerms } from './types.ts'

/** Σ n δ^d τ^t exp(−δ^l) exp(−τ^m): the form of Lemmon and Jacobsen for R-125 (2005). */
export function exponentialGroup(terms: ExponentialTerms): TermGroup {
  const count = terms.n.length
  const n = Float64Array.from(terms.n)
  const d = Int32Array.from(terms.d)
  const t = Float64Array.from(terms.t)
  const l = Int32Array.from(terms.l)
  const m = Float64Array.from(terms.m)
  const byT = distinct(terms.t)
  const byM = distinct(terms.m)
  const powersOfDelta = deltaPowers(Math.max(...d, ...l))
  const powersT = tauPowers(byT.values)
  const powersM = tauPowers(byM.values)

  return (tau, delta, sums) => {
    const tp = powersT(tau)
    const dp = powersOfDelta(delta)
    const mp = powersM(tau)
    for (let i = 0; i < count; i += 1) {
      const di = d[i] as number
      const ti = t[i] as number
      const li = l[i] as number
      const mi = m[i] as number
      const deltaL = li > 0 ? (dp[li] as number) : 0
      const tauM = mi > 0 ? (mp[byM.index[i] as number] as number) : 0
      const term =
        (n[i] as number) *
        (dp[di] as number) *
        (tp[byT.index[i] as number] as number) *
        Math.exp(-deltaL - tauM)
      const L = li * deltaL
      const M = mi * tauM
      const u = di - L
      const v = ti - M
      sums.a += term
      sums.a_d += (term * u) / delta
      sums.a_t += (term * v) / tau
      sums.a_dd += (term * (u * (u - 1) - li * L)) / (delta * delta)
      sums.a_dt += (term * u * v) / (delta * tau)
      sums.a_tt += (term * (v * (v - 1) - mi * M)) / (tau * tau)
    }
  }
}
