import type { Notes } from '../../../notes.ts'
import {
  mass,
  type Quantity,
  surelyAbove,
  surelyBelow,
  type Uncertain,
} from '../../../quantity/index.ts'
import { shopScale } from '../../shop-scale.ts'
import type { ChargeInput } from '../input/fields.ts'

export interface AgainstScale {
  readonly smallest: Quantity<'mass'>
  readonly verdict: 'weighable' | 'too-small' | 'cannot-tell'
  readonly text: string
}

const TEXTS: Readonly<Record<AgainstScale['verdict'], string>> = {
  weighable: 'The mass is more than the scale can be off.',
  'too-small': 'The mass is smaller than the scale can be off: adding it by that scale is a guess.',
  'cannot-tell': 'The mass is about what the scale can be off.',
}

/** A mass to weigh against what the scale can tell apart: the larger of its division and its tolerance. */
export function againstScale(
  toWeigh: Uncertain,
  {
    scaleDivision,
    scaleTolerance,
    labelCharge,
  }: Pick<ChargeInput, 'scaleDivision' | 'scaleTolerance' | 'labelCharge'>,
  notes: Notes,
): AgainstScale {
  const division = scaleDivision?.si ?? 0
  const smallestKg = Math.max(
    division,
    scaleTolerance?.si ?? (division > 0 ? 0 : shopScale(labelCharge, notes)),
  )
  const verdict = surelyAbove(toWeigh, smallestKg)
    ? 'weighable'
    : surelyBelow(toWeigh, smallestKg)
      ? 'too-small'
      : 'cannot-tell'
  return { smallest: mass(smallestKg), verdict, text: TEXTS[verdict] }
}
