import type { HelmholtzDerivatives } from './model.ts'
import { exponentialGroup } from './residual-exponential.ts'
import { gaussianGroup } from './residual-gaussian.ts'
import { nonAnalyticGroup } from './residual-non-analytic.ts'
import { powerGroup } from './residual-power.ts'
import type { TermGroup } from './term-group.ts'
import type { ResidualTerms } from './types.ts'

/**
 * The residual part αʳ(τ, δ), ready to evaluate.
 *
 * Term lists become flat arrays once, here; an evaluation allocates nothing but its result.
 */
export function residualPart(
  terms: ResidualTerms,
): (tau: number, delta: number) => HelmholtzDerivatives {
  const groups: TermGroup[] = []
  if (terms.power !== undefined) groups.push(powerGroup(terms.power))
  if (terms.gaussian !== undefined) groups.push(gaussianGroup(terms.gaussian))
  if (terms.exponential !== undefined) groups.push(exponentialGroup(terms.exponential))
  if (terms.nonAnalytic !== undefined) groups.push(nonAnalyticGroup(terms.nonAnalytic))
  return (tau, delta) => {
    const sums = { a: 0, a_d: 0, a_t: 0, a_dd: 0, a_dt: 0, a_tt: 0 }
    for (let i = 0; i < groups.length; i += 1) (groups[i] as TermGroup)(tau, delta, sums)
    return sums
  }
}
