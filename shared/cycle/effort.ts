import type { InPieces } from '../pieces.ts'

let trials = 0

/** Called once for each time that the refrigerant is followed round. */
export function countTrial(): void {
  trials += 1
}

/** How often that was, in all: the work between two calls is their difference, whatever the machine's speed. */
export const trialsSoFar = (): number => trials

/**
 * Work with the number of its own trials: none of what has its turn between its pieces is among them.
 *
 * @param most - Given up with nothing where more are needed.
 */
export function* counting<T>(
  work: InPieces<T>,
  most = Number.POSITIVE_INFINITY,
): InPieces<{ readonly value: T; readonly trials: number } | undefined> {
  for (let own = 0; own <= most; ) {
    const before = trials
    const { done, value } = work.next()
    own += trials - before
    if (done === true) return { value, trials: own }
    yield
  }
  return undefined
}
