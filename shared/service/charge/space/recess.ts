import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { type Tied, tied, total } from '../../../quantity/index.ts'
import type { Path } from '../input/gather.ts'
import type { Coupling } from '../input/items.ts'
import { cylinder } from './geometry.ts'

/** What stands behind a coupling's spill, best first. */
export const EVIDENCE = ['maker', 'caliper', 'hex', 'what-if'] as const
export type Evidence = (typeof EVIDENCE)[number]

/** The space that one coupling can have spilt at one parting, m³. */
export interface Recess {
  readonly evidence: Evidence
  /** Least and most; the same where the maker says it, nothing and the bound where it was measured. */
  readonly least: Tied | undefined
  readonly most: Tied
  readonly formula: string
}

/**
 * What one coupling can have spilt, by the best evidence that was given.
 *
 * A maker's figure is the spill. What a caliper or the outside gives is a bound: π/4 · d² · (a + b)
 * of the recess between the shut valves, π/4 · s² · L of the joined coupling (a cylinder that touches
 * the hex's flats). It holds where both valves shut before the seal opened, and is never the loss.
 *
 * @returns undefined without any figure.
 * @throws {CalcError} `missing-input` for half a measurement, `bad-input` for a range beside a figure.
 */
export function recessOf(coupling: Coupling, whatIf: boolean, path: Path): Recess | undefined {
  const { spillVolume, mouthDiameter, firstDepth, secondDepth, hexSize, joinedLength } = coupling
  const { spillFrom, spillTo } = coupling
  if ((spillVolume ?? mouthDiameter ?? hexSize) && (spillFrom || spillTo)) {
    throw new CalcError('bad-input', 'A spill volume is known or a what-if range, not both.', {
      path: [...path, 'spillFrom'],
      hint: 'Keep spillVolume where the maker gives it ("3 mL ±0.5 mL"), or the caliper figures.',
    })
  }
  if (spillVolume) {
    const known = tied(spillVolume, 'spill volume')
    return { evidence: 'maker', least: known, most: known, formula: "the maker's spill volume" }
  }
  if (mouthDiameter || firstDepth || secondDepth) {
    const of = measured({ mouthDiameter, firstDepth, secondDepth }, path)
    const deep = total([of('firstDepth'), of('secondDepth')])
    return {
      evidence: 'caliper',
      least: undefined,
      most: cylinder(of('mouthDiameter'), deep),
      formula: 'π/4 × mouth² × (depth of one half + depth of the other)',
    }
  }
  if (hexSize || joinedLength) {
    const of = measured({ hexSize, joinedLength }, path)
    return {
      evidence: 'hex',
      least: undefined,
      most: cylinder(of('hexSize'), of('joinedLength')),
      formula: 'π/4 × hex² × joined length',
    }
  }
  return rangeOf(coupling, whatIf, path)
}

function rangeOf({ spillFrom, spillTo }: Coupling, whatIf: boolean, path: Path) {
  if (!spillFrom && !spillTo && !whatIf) return undefined
  if (!spillFrom || !spillTo) {
    throw new CalcError('missing-input', 'A what-if needs the range of the spill volume.', {
      path: [...path, spillFrom ? 'spillTo' : 'spillFrom'],
      hint: 'Give spillFrom and spillTo ("1 mL", "8 mL"). No published figure exists, so the range is yours.',
    })
  }
  if (!whatIf) {
    throw new CalcError('refused', 'A range of spill volumes gives a what-if, not a correction.', {
      path: [...path, 'spillFrom'],
      hint: data.hints['what-if'],
    })
  }
  if (spillTo.si < spillFrom.si) {
    throw new CalcError('bad-input', 'The what-if range ends below its start.', {
      path: [...path, 'spillTo'],
      hint: 'Give spillFrom as the smaller volume.',
    })
  }
  return {
    evidence: 'what-if' as const,
    least: tied(spillFrom, 'smallest spill volume'),
    most: tied(spillTo, 'largest spill volume'),
    formula: 'a what-if range',
  }
}

/** The lengths of a measurement, or the refusal of the first that is missing. */
function measured(
  lengths: Readonly<Record<string, Coupling['mouthDiameter']>>,
  path: Path,
): (field: string) => Tied {
  const fields = Object.keys(lengths)
  const lacking = fields.find((field) => !lengths[field])
  if (lacking) {
    throw new CalcError('missing-input', `The measurement of the coupling lacks ${lacking}.`, {
      path: [...path, lacking],
      hint: `Give ${fields.join(', ')}, such as 18 mm, 4 mm, 2 mm.`,
    })
  }
  return (field) => tied(lengths[field] ?? { si: 0 }, field)
}
