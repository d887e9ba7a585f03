import { FEATURES, type Observation } from './features.ts'
import type { Hypothesis } from './hypotheses.ts'
import { covarianceOf } from './spread.ts'

/** Degrees of freedom of the errors: heavier tails than a normal, so that one bad probe does not decide. */
const DEGREES = 5
/** Smallest share of a feature's own variance that is added, so that no set of readings is singular. */
const JITTER = 1e-9

/** What a hypothesis says of some observations. */
export interface Fit {
  /** Mahalanobis distance, squared. */
  readonly distance: number
  /** ln of the likelihood, but for what is the same for all hypotheses. */
  readonly logLikelihood: number
  /** Lower Cholesky factor of the observations' covariance, row by row. */
  readonly factor: Float64Array
  /** Σ⁻¹(y − μ). */
  readonly solved: Float64Array
}

/** How well a hypothesis explains observations: a multivariate t with its spread and the instruments'. */
export function fitOf(hypothesis: Hypothesis, observations: readonly Observation[]): Fit {
  const m = observations.length
  const covariance = new Float64Array(m * m)
  const gap = new Float64Array(m)
  for (let i = 0; i < m; i += 1) {
    const { feature, value, sigma } = observations[i] as Observation
    const place = FEATURES.indexOf(feature)
    for (let j = 0; j < i; j += 1) {
      const other = FEATURES.indexOf((observations[j] as Observation).feature)
      const both = covarianceOf(hypothesis.spread, place, other)
      covariance[i * m + j] = both
      covariance[j * m + i] = both
    }
    const variance = covarianceOf(hypothesis.spread, place, place)
    covariance[i * m + i] = variance * (1 + JITTER) + sigma * sigma
    gap[i] = value - (hypothesis.mean[place] as number)
  }
  // a t whose covariance is the one above; where that is a guess, one that is wider in its middle
  const scale = hypothesis.isGuess === true ? DEGREES : DEGREES - 2
  const factor = cholesky(covariance, m)
  const half = forward(factor, gap)
  let [distance, logDeterminant] = [0, 0]
  for (let i = 0; i < m; i += 1) {
    distance += (half[i] as number) ** 2
    logDeterminant += 2 * Math.log(factor[i * m + i] as number)
  }
  return {
    distance,
    logLikelihood: -0.5 * logDeterminant - 0.5 * (DEGREES + m) * Math.log1p(distance / scale),
    factor,
    solved: backward(factor, half),
  }
}

/** Lower factor L of a positive definite matrix, L Lᵀ. */
export function cholesky(matrix: Float64Array, n: number): Float64Array {
  const factor = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j] as number
      for (let k = 0; k < j; k += 1) {
        sum -= (factor[i * n + k] as number) * (factor[j * n + k] as number)
      }
      factor[i * n + j] = i === j ? Math.sqrt(sum) : sum / (factor[j * n + j] as number)
    }
  }
  return factor
}

/** L x = b. */
export function forward(factor: Float64Array, b: Float64Array): Float64Array {
  const n = b.length
  const x = new Float64Array(n)
  for (let i = 0; i < n; i += 1) {
    let sum = b[i] as number
    for (let k = 0; k < i; k += 1) sum -= (factor[i * n + k] as number) * (x[k] as number)
    x[i] = sum / (factor[i * n + i] as number)
  }
  return x
}

/** Lᵀ x = b. */
function backward(factor: Float64Array, b: Float64Array): Float64Array {
  const n = b.length
  const x = new Float64Array(n)
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = b[i] as number
    for (let k = i + 1; k < n; k += 1) sum -= (factor[k * n + i] as number) * (x[k] as number)
    x[i] = sum / (factor[i * n + i] as number)
  }
  return x
}
