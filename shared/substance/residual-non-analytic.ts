import type { TermGroup } from './term-group.ts'
import type { NonAnalyticTerms } from './types.ts'

/**
 * The equation is singular where δ = 1; a step this small away changes no digit that counts
 * and keeps the powers of (δ−1)² finite.
 */
const NEAREST = 1e-10

/** The critical-region terms of Span and Wagner (J. Phys. Chem. Ref. Data 25, 1509, 1996). */
export function nonAnalyticGroup(terms: NonAnalyticTerms): TermGroup {
  const list = terms.n.map((n, i) => ({
    n,
    a: terms.a[i] ?? 0,
    b: terms.b[i] ?? 0,
    k: 1 / (2 * (terms.beta[i] ?? 1)),
    A: terms.A[i] ?? 0,
    B: terms.B[i] ?? 0,
    C: terms.C[i] ?? 0,
    D: terms.D[i] ?? 0,
  }))

  return (tau, delta, sums) => {
    const raw = delta - 1
    const x = Math.abs(raw) < NEAREST ? NEAREST : raw
    const y = tau - 1
    const xx = x * x
    for (let i = 0; i < list.length; i += 1) {
      const { n, a, b, k, A, B, C, D } = list[i] as (typeof list)[number]
      const powK = A * xx ** k
      const powA = B * xx ** a
      const theta = -y + powK
      const Delta = theta * theta + powA
      // ∂θ/∂τ = −1; derivatives of [(δ−1)²]^k by δ are 2k/(δ−1) times it, and so on.
      const theta_d = (2 * k * powK) / x
      const theta_dd = (2 * k * (2 * k - 1) * powK) / xx
      const Delta_d = 2 * theta * theta_d + (2 * a * powA) / x
      const Delta_dd =
        2 * (theta_d * theta_d + theta * theta_dd) + (2 * a * (2 * a - 1) * powA) / xx
      const Delta_t = -2 * theta
      const Delta_tt = 2
      const Delta_dt = -2 * theta_d
      const g = Delta ** b
      const g1 = (b * g) / Delta
      const g2 = ((b - 1) * g1) / Delta
      const g_d = g1 * Delta_d
      const g_t = g1 * Delta_t
      const g_dd = g2 * Delta_d * Delta_d + g1 * Delta_dd
      const g_tt = g2 * Delta_t * Delta_t + g1 * Delta_tt
      const g_dt = g2 * Delta_d * Delta_t + g1 * Delta_dt
      const psi = Math.exp(-C * xx - D * y * y)
      const psi_d = -2 * C * x * psi
      const psi_t = -2 * D * y * psi
      const psi_dd = 2 * C * (2 * C * xx - 1) * psi
      const psi_tt = 2 * D * (2 * D * y * y - 1) * psi
      const psi_dt = 4 * C * D * x * y * psi
      // h = δψ
      const h = delta * psi
      const h_d = psi + delta * psi_d
      const h_dd = 2 * psi_d + delta * psi_dd
      const h_t = delta * psi_t
      const h_tt = delta * psi_tt
      const h_dt = psi_t + delta * psi_dt
      sums.a += n * g * h
      sums.a_d += n * (g_d * h + g * h_d)
      sums.a_t += n * (g_t * h + g * h_t)
      sums.a_dd += n * (g_dd * h + 2 * g_d * h_d + g * h_dd)
      sums.a_dt += n * (g_dt * h + g_d * h_t + g_t * h_d + g * h_dt)
      sums.a_tt += n * (g_tt * h + 2 * g_t * h_t + g * h_tt)
    }
  }
}
