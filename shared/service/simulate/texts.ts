import data from '../../../data/service/simulate.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Quantity } from '../../quantity/index.ts'

/** Every sentence of this step: they are edited in `data/service/simulate.json`. */
export const TEXTS = data

/**
 * A condition of the model as it is set: it is no reading, and carries no ±.
 *
 * @throws {CalcError} `bad-quantity` about `field` where there is one.
 */
export function withoutBand<Q extends Quantity>(given: Q, field: string): Q {
  if (given.plusMinus === undefined) return given
  throw new CalcError('bad-quantity', 'What is set in a model carries no uncertainty.', {
    path: [field],
    hint: 'Leave the ± out; to see what it does, ask for both of its ends.',
  })
}
