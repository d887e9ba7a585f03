import data from '../../data/service/charge.json' with { type: 'json' }
import type { Notes } from '../notes.ts'
import { mass, type Quantity, quantity, say } from '../quantity/index.ts'
import { sourceTable } from '../source-table.ts'

const sourceOf = sourceTable(data.sources)

/** How far a charge may be off: below `from` it surely may, above `to` it surely may not. */
export interface ChargeTolerance {
  readonly from: Quantity<'mass'>
  readonly to: Quantity<'mass'>
  readonly basis: 'given' | 'published' | 'scaled'
}

/**
 * The tolerance of a charge: the maker's, else the published one of US Army loader manuals, 1 to 2 oz.
 *
 * That one is of a cab's charge: beyond the sizes that cabs hold it is scaled in proportion, since an
 * ounce is nothing in a cold store and much in a small car.
 *
 * @param labelCharge - Without it the published figure stands as it is.
 * @param field - Name of the input field that would override it, for the assumption.
 */
export function chargeToleranceOf(
  given: Quantity<'mass'> | undefined,
  labelCharge: Quantity<'mass'> | undefined,
  notes: Pick<Notes, 'assumptions' | 'sources'>,
  field = 'chargeTolerance',
): ChargeTolerance {
  if (given) return { from: given, to: given, basis: 'given' }
  const { fromOz, toOz, holdsFromLb, holdsToLb, source, sizeSource } = data.chargeTolerance
  const scale = scaleOf(labelCharge, holdsFromLb, holdsToLb)
  const scaled = scale !== 1
  const [from, to] = [fromOz, toOz].map((ounces) =>
    mass(quantity('mass', ounces * scale, 'oz').si),
  ) as [Quantity<'mass'>, Quantity<'mass'>]
  notes.sources.push(sourceOf(source as 'loader-charge'))
  if (scaled) notes.sources.push(sourceOf(sizeSource as 'tolerance-by-size'))
  notes.assumptions.push({
    field,
    taken: `the charge may be off by ${say(from)} to ${say(to)}`,
    short: `charge tolerance ${say(from)}`,
    because: scaled
      ? "none was given; a published loader manual's 1 to 2 oz, in proportion to the charge (common practice)"
      : 'none was given; a published loader manual allows 1 to 2 oz',
  })
  return { from, to, basis: scaled ? 'scaled' : 'published' }
}

function scaleOf(charge: Quantity<'mass'> | undefined, fromLb: number, toLb: number): number {
  if (!charge) return 1
  const pounds = charge.to('lb')
  return pounds > toLb ? pounds / toLb : pounds < fromLb ? pounds / fromLb : 1
}
