import { FEATURES } from './features.ts'

/** How readings spread together: what many hypotheses have in common, and what one adds to it. */
export interface Spread {
  /** Covariance, row by row in the order of FEATURES. */
  readonly common: Float64Array
  /** What moves all readings at once, 1 σ. */
  readonly along?: Float64Array | undefined
  /** Further variance of each reading by itself. */
  readonly own?: Float64Array | undefined
}

/** Covariance of two readings, by their places in FEATURES. */
export function covarianceOf({ common, along, own }: Spread, i: number, j: number): number {
  let value = common[i * FEATURES.length + j] as number
  if (along !== undefined) value += (along[i] as number) * (along[j] as number)
  return own !== undefined && i === j ? value + (own[i] as number) : value
}

/** The same spread so many times as wide. */
export function widened(spread: Spread, times: number): Spread {
  const n = FEATURES.length
  const common = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) common[i * n + j] = times * times * covarianceOf(spread, i, j)
  }
  return { common }
}

/** a + b, reading by reading. */
export function added(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length)
  for (let i = 0; i < out.length; i += 1) out[i] = (a[i] as number) + (b[i] as number)
  return out
}
