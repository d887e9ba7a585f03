/**
 * Chebyshev series over adjoining intervals, as stored: `x` holds the ends of the intervals in
 * rising order, `c` the coefficients of each, so x.length = c.length + 1.
 */
export interface Pieces {
  readonly x: readonly number[]
  readonly c: readonly (readonly number[])[]
}

/**
 * A function of one variable from its pieces; Clenshaw's recurrence, no search but for the piece.
 *
 * Defined from the first end to the last; the caller checks that, since it knows what to say.
 * Outside (by rounding at an end, say) the nearest piece is used.
 */
export function evaluator(pieces: Pieces): (x: number) => number {
  const parts = pieces.c.map((coefficients, i) => {
    const from = pieces.x[i] ?? Number.NaN
    const to = pieces.x[i + 1] ?? Number.NaN
    return series(from, to, coefficients)
  })
  const [only] = parts
  if (only === undefined) throw new RangeError('a curve needs at least one piece')
  if (parts.length === 1) return only
  const ends = Float64Array.from(pieces.x.slice(1, -1))
  return (x) => {
    let i = 0
    while (i < ends.length && x > (ends[i] as number)) i += 1
    return (parts[i] ?? only)(x)
  }
}

/**
 * Even and odd terms apart, since T₂ₖ(u) = Tₖ(v) and T₂ₖ₊₁(u) = u φₖ(v) with v = 2u² − 1, where φ
 * follows the recurrence of T from φ₀ = 1 and φ₁ = 2v − 1: two chains of half the length, neither
 * waiting for the other.
 */
function series(from: number, to: number, coefficients: readonly number[]): (x: number) => number {
  const count = Math.ceil(coefficients.length / 2)
  const even = Float64Array.from({ length: count }, (_, k) => coefficients[2 * k] ?? 0)
  const odd = Float64Array.from({ length: count }, (_, k) => coefficients[2 * k + 1] ?? 0)
  const scale = 4 / (to - from)
  const shift = (2 * (from + to)) / (to - from)
  return (x) => {
    const twiceU = scale * x - shift
    const twiceV = twiceU * twiceU - 2
    let e1 = 0
    let e2 = 0
    let o1 = 0
    let o2 = 0
    for (let k = count - 1; k > 0; k -= 1) {
      // In this order the subtraction does not wait for the product.
      const e = twiceV * e1 + ((even[k] as number) - e2)
      const o = twiceV * o1 + ((odd[k] as number) - o2)
      e2 = e1
      e1 = e
      o2 = o1
      o1 = o
    }
    const o0 = twiceV * o1 + ((odd[0] as number) - o2)
    return (even[0] as number) + 0.5 * (twiceV * e1 + twiceU * (o0 - o1)) - e2
  }
}
