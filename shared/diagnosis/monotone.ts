/**
 * Slopes at the points of a curve that rises or falls between neighbours as they do: the weighted
 * harmonic mean of both sides (Fritsch and Butland 1984), nothing at a turning point.
 *
 * @param x - Rising.
 */
export function monotoneSlopes(x: readonly number[], y: readonly number[]): Float64Array {
  const n = x.length
  const slopes = new Float64Array(n)
  const chord = (k: number) => {
    const width = (x[k + 1] as number) - (x[k] as number)
    return { width, slope: ((y[k + 1] as number) - (y[k] as number)) / width }
  }
  for (let k = 1; k < n - 1; k += 1) {
    const [a, b] = [chord(k - 1), chord(k)]
    if (a.slope * b.slope <= 0) continue
    const [wa, wb] = [2 * b.width + a.width, b.width + 2 * a.width]
    slopes[k] = (wa + wb) / (wa / a.slope + wb / b.slope)
  }
  if (n > 1) {
    slopes[0] = endSlope(chord(0).slope, n > 2 ? (slopes[1] as number) : undefined)
    slopes[n - 1] = endSlope(chord(n - 2).slope, n > 2 ? (slopes[n - 2] as number) : undefined)
  }
  return slopes
}

/** At an end: so that the curve there is straight in its middle, held to three times the chord. */
function endSlope(chord: number, neighbour: number | undefined): number {
  if (neighbour === undefined) return chord
  const free = (3 * chord - neighbour) / 2
  if (free * chord <= 0) return 0
  return Math.abs(free) > 3 * Math.abs(chord) ? 3 * chord : free
}
