import data from '../../../../data/service/charge.json' with { type: 'json' }
import { quantity, type Uncertain, volume } from '../../../quantity/index.ts'
import { sourceTable } from '../../../source-table.ts'

const { rows, source } = data.couplings.likeParts

export const LIKE_PARTS_SOURCE = sourceTable(data.sources)(source as 'iso-14541')

/** What like couplings may spill by their standard, m³. */
interface LikeParts {
  readonly from: number
  readonly to: number
}

/**
 * The limits of ISO 14541 for couplings whose seals are about as wide as this mouth: those of the next
 * smaller and of the next larger size. A range of like parts, never this coupling's figure.
 *
 * @param mouth - Widest diameter inside the seal, m.
 * @returns undefined for a mouth wider than the largest size of the table.
 */
export function likeParts(mouth: Uncertain): LikeParts | undefined {
  const mouthMm = quantity('length', mouth.si, 'm').to('mm')
  const above = rows.find(({ sealMm }) => sealMm >= mouthMm)
  if (!above) return undefined
  const below = rows.findLast(({ sealMm }) => sealMm <= mouthMm)
  const cubic = (millilitres: number) => quantity('volume', millilitres, 'mL').si
  return { from: below ? cubic(below.mostMl) : 0, to: cubic(above.mostMl) }
}

/** The same of several couplings together; undefined where one has no like part in the table. */
export function likePartsOf(mouths: readonly Uncertain[]) {
  const found = mouths.map(likeParts)
  if (found.length === 0 || found.some((entry) => !entry)) return undefined
  const sum = (pick: (entry: LikeParts) => number) =>
    volume(found.reduce((all, entry) => all + (entry ? pick(entry) : 0), 0))
  return { from: sum(({ from }) => from), to: sum(({ to }) => to) }
}
