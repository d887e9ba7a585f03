import { CalcError } from '../../errors.ts'
import type { PlaceGiven } from '../../instrument/index.ts'
import type { Assumption, Step, Warning } from '../../operation.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import type { Case } from './cases.ts'
import type { CouplingLoss } from './couplings.ts'
import { difference, type Estimate, reading, settle } from './estimate.ts'
import type { Items } from './gather.ts'
import { type Inventory, massQuantity } from './inventory.ts'
import { type MassUnit, massText } from './mass-text.ts'

export interface ChargeInput extends Items, PlaceGiven {
  readonly refrigerant: string
  readonly case: Case
  readonly want?: 'correction' | 'full-charge' | undefined
  readonly sealed?: boolean | undefined
  readonly whatIf: boolean
  readonly labelCharge?: Quantity<'mass'> | undefined
  readonly makerCharge?: Quantity<'mass'> | undefined
  readonly makerCorrection?: Quantity<'mass'> | undefined
  readonly recovered?: Quantity<'mass'> | undefined
  readonly chargeTolerance?: Quantity<'mass'> | undefined
  readonly scaleResolution?: Quantity<'mass'> | undefined
  readonly scaleTolerance?: Quantity<'mass'> | undefined
  readonly vapourSpace?: Quantity<'volume'> | undefined
  readonly serviceHoseBore?: Quantity<'length'> | undefined
  readonly serviceHoseLength?: Quantity<'length'> | undefined
  readonly serviceHoseHolds?: 'liquid' | 'vapour' | undefined
  readonly serviceHoseStarts?: 'empty' | 'liquid' | 'vapour' | undefined
  readonly massUnit?: MassUnit | undefined
}

/** What a case makes of the input: the two kinds of job differ only here. */
export interface Job {
  /** Mass to weigh in, kg; undefined in a what-if. */
  readonly toAdd: Estimate | undefined
  readonly whatIf?: { readonly from: Estimate; readonly to: Estimate } | undefined
  /** What has left the machine, for the comparison with the tolerance; undefined for a full charge. */
  readonly missing: Estimate | undefined
  readonly totalTarget: Estimate | undefined
  readonly changeOfCharge: Estimate | undefined
  readonly ownEstimate: Estimate | undefined
  readonly couplings: readonly CouplingLoss[]
  readonly sections: readonly Inventory[]
  readonly parts: readonly Inventory[]
  readonly steps: readonly Step[]
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
  readonly advice: readonly string[]
}

/** The refusal of a mass that comes out below zero, about the field that most likely made it so. */
export function negative(what: string, field: string): CalcError {
  return new CalcError('out-of-range', `${what} comes out below zero.`, {
    path: [field],
    hint: 'Check which volume is old and which is new, the states, and the label charge.',
  })
}

/** What left the machine cannot be more than it held. */
export function withinLabel(missing: Estimate, label: Quantity<'mass'> | undefined): void {
  if (!label) return
  const excess = settle(difference(missing, reading(label)))
  if (excess.si - (excess.plusMinus ?? 0) > 0) {
    throw new CalcError(
      'out-of-range',
      `The opened part would have held ${massText(massQuantity(missing), undefined)}, more than the whole label charge of ${massText(label, undefined)}.`,
      {
        path: ['labelCharge'],
        hint: 'Check volumes, sizes and states; a long line that holds vapour may have been given as liquid.',
      },
    )
  }
}
