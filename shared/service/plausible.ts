import { CalcError } from '../errors.ts'
import type { Quantity } from '../quantity/index.ts'
import { say } from '../quantity/index.ts'

/**
 * Hands a reading through when it lies between what the trade meets.
 *
 * @param low - Smallest that is accepted, SI of the quantity, included.
 * @param high - Largest that is accepted, included.
 * @throws {CalcError} `out-of-range` about the field `path`.
 */
export function plausible<Q extends Quantity>(
  given: Q,
  low: number,
  high: number,
  what: string,
  path: readonly (string | number)[],
): Q {
  if (given.si >= low && given.si <= high) return given
  throw new CalcError('out-of-range', `${what} of ${say(given)} is not one that the trade meets.`, {
    path,
    hint: 'Check the number and its unit.',
  })
}
