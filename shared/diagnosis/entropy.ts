/**
 * How open a question still is, bit.
 *
 * @param shares - How likely each answer is, as shares of `total`.
 */
export function entropyBits(shares: Iterable<number>, total = 1): number {
  let bits = 0
  for (const share of shares) {
    const p = share / total
    if (p > 0) bits -= p * Math.log2(p)
  }
  return bits
}
