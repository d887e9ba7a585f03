/**
 * Chance by a seed: the same numbers for the same seed, everywhere and for ever.
 *
 * mulberry32 (Tommy Ettinger's generator of 32 bits, public domain): plenty for drawing a case.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** A normal deviate, held to ±2.5 standard deviations: an instrument is not off by more. */
export function normalFrom(random: () => number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()))
  return Math.max(-WIDEST, Math.min(WIDEST, radius * Math.cos(2 * Math.PI * random())))
}

const WIDEST = 2.5
