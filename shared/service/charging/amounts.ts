import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { mass, propagate, type Quantity, say, surelyAbove } from '../../quantity/index.ts'
import { type ChargeTolerance, chargeToleranceOf } from '../charge-tolerance.ts'
import type { ChargingInput } from './fields.ts'

/** Mass still to go in, with the charge's tolerance. */
export interface Amount {
  readonly toAdd: Quantity<'mass'>
  /** How far off the charge may be to either side: the smaller of a published range. */
  readonly tolerance: Quantity<'mass'>
  readonly basis: ChargeTolerance['basis']
  /** Whether what is missing is surely within the tolerance. */
  readonly enough: boolean
}

/**
 * What is still to go in.
 *
 * @throws {CalcError} `refused` when surely more than charge and tolerance is already in.
 */
export function amountToAdd(
  { labelCharge, alreadyIn, chargeTolerance }: ChargingInput,
  notes: Notes,
): Amount {
  if (!(labelCharge.si > 0)) {
    throw new CalcError('bad-input', 'A charge of nothing is no target.', {
      hint: 'Read it on the label of the machine, such as 2 lb 6 oz.',
      path: ['labelCharge'],
    })
  }
  if (chargeTolerance && chargeTolerance.si >= labelCharge.si) {
    throw new CalcError(
      'bad-input',
      `A tolerance of ${say(chargeTolerance)} is no tolerance for a charge of ${say(labelCharge)}.`,
      {
        hint: 'Give how far off the charge may be to either side, such as 1 oz.',
        path: ['chargeTolerance'],
      },
    )
  }
  const { from: tolerance, basis } = chargeToleranceOf(chargeTolerance, labelCharge, notes)
  if (!alreadyIn) {
    notes.assumptions.push({
      field: 'alreadyIn',
      taken: 'an evacuated system',
      short: 'evacuated before',
      because: 'nothing was said to be in it',
    })
  }
  const inside = alreadyIn ?? mass(0)
  const over = propagate([inside, labelCharge], (held = 0, full = 0) => held - full)
  if (surelyAbove(over, tolerance.si)) {
    throw new CalcError(
      'refused',
      `${say(inside)} is already in, more than the charge of ${say(labelCharge)} with its tolerance of ${say(tolerance)}.`,
      { hint: 'Recover, evacuate and weigh in the whole charge.', path: ['alreadyIn'] },
    )
  }
  const toAdd = mass(Math.max(-over.si, 0), over.plusMinus)
  notes.steps.push({
    what: 'Mass to add',
    formula: 'charge − what is already in',
    values: { charge: labelCharge, alreadyIn: inside },
    gives: toAdd,
  })
  const enough = -over.si + (over.plusMinus ?? 0) <= tolerance.si
  if (enough) {
    notes.warnings.push({
      code: 'within-tolerance',
      message: `What is missing is within the tolerance of ${say(tolerance)}: nothing needs adding.`,
    })
  }
  return { toAdd, tolerance, basis, enough }
}
