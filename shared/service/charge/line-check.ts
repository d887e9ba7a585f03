import data from '../../../data/service/charge-checks.json' with { type: 'json' }
import { massPerLength, type Quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'
import { product, settle } from './estimate.ts'
import type { Geometry } from './fields.ts'
import type { Filling } from './filling.ts'
import type { Space } from './geometry.ts'

const OZ_PER_FT = 0.028349523125 / 0.3048

/** A printed mass per length of line beside bore area times density. */
export interface LineCheck {
  readonly printed: Quantity<'massPerLength'>
  readonly computed: Quantity<'massPerLength'>
  /** Printed over computed. */
  readonly ratio: number
  readonly source: Source
}

/**
 * What makers print for this line, beside our own mass per length.
 *
 * Printed liquid-line figures (R-410A only) also cover the suction line and rounding: they lie
 * above bore area times density, most for the smallest tubes.
 */
export function lineChecks(
  r: Refrigerant,
  { makerMassPerLength, length }: Geometry,
  space: Space,
  filling: Filling | undefined,
): readonly LineCheck[] {
  if (!filling || !space.volume || !length || length.si === 0) return []
  const computedSi = settle(product(space.volume, filling.density)).si / length.si
  if (!(computedSi > 0)) return []
  const check = (printedSi: number, source: Source): LineCheck => ({
    printed: massPerLength(printedSi),
    computed: massPerLength(computedSi),
    ratio: Number((printedSi / computedSi).toFixed(3)),
    source,
  })
  const own = makerMassPerLength ? [check(makerMassPerLength.si, AS_GIVEN)] : []
  const published = data.liquidLine.filter(
    (row) => filling.phase === 'liquid' && row.refrigerant === r.info.id && row.tube === space.tube,
  )
  return [
    ...own,
    ...published.map((row) =>
      check(row.ozPerFt * OZ_PER_FT, checkSource(row.source as CheckSource)),
    ),
  ].filter(({ ratio }) => Number.isFinite(ratio))
}

/** Not ours to judge: what the user read from the maker. */
const AS_GIVEN: Source = {
  id: 'maker-as-given',
  title: "The equipment maker's figure, as given in the input",
  mark: 'secondary',
}

/** Source in data/service/charge-checks.json. */
export const checkSource = sourceTable(data.sources)

export type CheckSource = keyof typeof data.sources
