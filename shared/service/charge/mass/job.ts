import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { difference, type Quantity, say, settle, type Tied, tied } from '../../../quantity/index.ts'
import { fillIn } from '../../../sentence.ts'
import type { CouplingLoss } from './coupling.ts'
import type { Inventory } from './inventory.ts'
import { massOf } from './shown.ts'

export const KINDS = ['correction', 'bound', 'full-charge', 'what-if', 'measure'] as const

/** What a job makes of the input: the kinds of it differ only here. Masses in kg. */
export interface ChargeJob {
  /**
   * `bound`: what cannot be exceeded, and no loss; `measure`: nothing can be said before something is
   * measured; `full-charge` without `toAdd`: the full charge has to be found first.
   */
  readonly kind: (typeof KINDS)[number]
  /** Mass to weigh in; undefined where that is not known. */
  readonly toAdd: Tied | undefined
  /** Least and most that is gone, of a bound or a what-if. */
  readonly range?: { readonly from: Tied; readonly to: Tied } | undefined
  /** What is known to have left the machine; undefined for a full charge. */
  readonly missing: Tied | undefined
  readonly totalTarget: Tied | undefined
  readonly changeOfCharge: Tied | undefined
  readonly ownEstimate: Tied | undefined
  readonly couplings: readonly CouplingLoss[]
  readonly sections: readonly Inventory[]
  readonly parts: readonly Inventory[]
  readonly advice: readonly string[]
  /** Fields that would carry it on. */
  readonly needs: readonly string[]
}

/** The refusal of a mass that comes out below zero, about the field that most likely made it so. */
export function negative(what: string, field: string): CalcError {
  return new CalcError('out-of-range', `${what} comes out below zero.`, {
    path: [field],
    hint: 'Check which volume is old and which is new, the states, and the label charge.',
  })
}

/** What left the machine cannot be more than it held. */
export function withinLabel(missing: Tied, label: Quantity<'mass'> | undefined): void {
  if (!label) return
  const excess = settle(difference(missing, tied(label, 'label charge')))
  if (excess.si - (excess.plusMinus ?? 0) > 0) {
    throw new CalcError(
      'out-of-range',
      fillIn(data.refusals['more-than-label'], { held: say(massOf(missing)), label: say(label) }),
      {
        path: ['labelCharge'],
        hint: data.hints['check-sizes'],
      },
    )
  }
}
