/**
 * Work that can be left between its pieces: at each `yield` whoever drives it may let something else
 * have its turn. What it gives depends on nothing that happens meanwhile.
 */
export type InPieces<T> = Generator<undefined, T, undefined>

/** All of it, one piece after the other. */
export function atOnce<T>(work: InPieces<T>): T {
  for (;;) {
    const { done, value } = work.next()
    if (done === true) return value
  }
}
