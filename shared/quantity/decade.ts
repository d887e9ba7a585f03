const LOWEST = -5
const EDGES = Float64Array.from({ length: 12 }, (_, index) => Number(`1e${LOWEST + index}`))
/** Just below a power of ten the logarithm may be rounded up to a whole number. */
const NEAR = 1 + 1e-12

/**
 * `Math.floor(Math.log10(size))`, by comparison where figures lie: an answer asks for a hundred of them.
 *
 * @param size - Above zero.
 */
export function decadeOf(size: number): number {
  let place = 0
  while (place < EDGES.length && size >= (EDGES[place] as number)) place += 1
  const beyond = place === 0 || place === EDGES.length
  if (beyond || size * NEAR >= (EDGES[place] as number)) return Math.floor(Math.log10(size))
  return LOWEST + place - 1
}
