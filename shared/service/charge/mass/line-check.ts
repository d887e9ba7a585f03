import data from '../../../../data/service/charge.json' with { type: 'json' }
import { massPerLength, product, type Quantity, quantity, settle } from '../../../quantity/index.ts'
import { sourceTable } from '../../../source-table.ts'
import type { Source } from '../../../sources.ts'
import type { Geometry } from '../input/items.ts'
import type { Filling } from '../space/filling.ts'
import type { Space } from '../space/geometry.ts'
import type { Setting } from '../space/setting.ts'

/** Source in data/service/charge.json. */
export const chargeSource = sourceTable(data.sources)

/** A printed mass per length of line beside bore area times density. */
export interface LineCheck {
  readonly printed: Quantity<'massPerLength'>
  readonly computed: Quantity<'massPerLength'>
  /** Printed over computed. */
  readonly ratio: number
  /** Id in sources. */
  readonly source: string
}

/**
 * What makers print for this line, beside our own mass per length.
 *
 * Printed liquid-line figures (R-410A only) also cover the suction line and rounding: they lie
 * above bore area times density, most for the smallest tubes.
 */
export function lineChecks(
  { r, notes }: Setting,
  { makerMassPerLength, length }: Geometry,
  space: Space,
  filling: Filling | undefined,
): readonly LineCheck[] {
  if (!filling || !space.volume || !length || length.si === 0) return []
  const computedSi = settle(product(space.volume, filling.density)).si / length.si
  if (!(computedSi > 0)) return []
  const check = (printedSi: number, source: Source): readonly LineCheck[] => {
    const ratio = Number((printedSi / computedSi).toFixed(3))
    if (!Number.isFinite(ratio)) return []
    notes.sources.push(source)
    return [
      {
        printed: massPerLength(printedSi),
        computed: massPerLength(computedSi),
        ratio,
        source: source.id,
      },
    ]
  }
  const published = data.liquidLine.filter(
    (row) => filling.phase === 'liquid' && row.refrigerant === r.info.id && row.tube === space.tube,
  )
  return [
    ...(makerMassPerLength ? check(makerMassPerLength.si, AS_GIVEN) : []),
    ...published.flatMap((row) =>
      check(
        quantity('massPerLength', row.ozPerFt, 'oz/ft').si,
        chargeSource(row.source as keyof typeof data.sources),
      ),
    ),
  ]
}

/** Not ours to judge: what the user read from the maker. */
const AS_GIVEN: Source = {
  id: 'maker-as-given',
  title: "The equipment maker's figure, as given in the input",
  mark: 'secondary',
}
