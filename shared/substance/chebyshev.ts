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

function series(from: number, to: number, coefficients: readonly number[]): (x: number) => number {
  const c = Float64Array.from(coefficients)
  const last = c.length - 1
  const scale = 4 / (to - from)
  const shift = (2 * (from + to)) / (to - from)
  return (x) => {
    const twiceU = scale * x - shift
    let b1 = 0
    let b2 = 0
    for (let k = last; k > 0; k -= 1) {
      // In this order the subtraction does not wait for the product.
      const b = twiceU * b1 + ((c[k] as number) - b2)
      b2 = b1
      b1 = b
    }
    return (c[0] as number) + 0.5 * twiceU * b1 - b2
  }
}
