import data from '../../../data/service/oil.json' with { type: 'json' }
import type { Basis, Figure, Told } from '../../answer/told.ts'
import type { Computed } from '../../operation.ts'
import type { Mark } from '../../sources.ts'
import type { OilInput } from './fields.ts'
import type { OilResult } from './result.ts'

const { told: SENTENCES, toldNext: NEXT } = data

/** So long the parts may be before the headline leaves them to the figures, characters. */
const ROOM_FOR_PARTS = 50
const MOST_PARTS = 3

const BASIS_OF: Partial<Readonly<Record<Mark, Basis>>> = {
  memory: 'from memory',
  secondary: 'secondary',
  'common-practice': 'common practice',
}

/**
 * The answer in a mechanic's words.
 *
 * @param mark - How far it was checked that this oil fits.
 */
export function toldOf(input: OilInput, result: Computed<OilResult>, mark: Mark | undefined): Told {
  const { lines, pourIn, add, addFrom, addTo, oilType, compressor, limited } = result
  const spread = addTo.si - addFrom.si > 0
  const parts = lines.filter((line) => line.add.si > 0)
  const named = parts.map(({ what }, index) => `${what} {part${index}|bare}`).join(', ')
  const short = parts.length > 1 && parts.length <= MOST_PARTS && named.length <= ROOM_FOR_PARTS
  const id =
    add.si === 0
      ? 'nothing'
      : pourIn.si === 0
        ? 'nothing-to-pour'
        : short && pourIn.si === add.si && !limited
          ? 'pour-parts'
          : 'pour'
  const { headline, next } = SENTENCES[id]
  const list: (Figure | undefined)[] = [
    { id: 'pourIn', label: 'Pour in', value: pourIn },
    oilType.oil
      ? {
          id: 'oil',
          label: 'Oil',
          value: oilType.oil,
          basis: mark && BASIS_OF[mark],
          says:
            oilType.verdict === 'ask-maker' ? "only if the compressor's label names it" : undefined,
        }
      : undefined,
    ...parts.slice(0, spread ? 2 : MOST_PARTS).map(
      ({ what, add: value }, index): Figure => ({
        id: `part${index}`,
        label: what.slice(0, 14),
        value,
      }),
    ),
    spread
      ? { id: 'addFrom', label: 'At least', value: addFrom, says: 'of what makers print' }
      : undefined,
    spread
      ? { id: 'addTo', label: 'At most', value: addTo, says: 'of what makers print' }
      : undefined,
  ]
  const figures = list.filter((figure): figure is Figure => figure !== undefined)
  if (id === 'pour-parts' && spread && parts.length === MOST_PARTS) {
    figures.splice(-2, 2, {
      id: 'part2',
      label: (parts[2]?.what ?? '').slice(0, 14),
      value: parts[2]?.add ?? add,
    })
  }
  const opened = (input.replaced ?? []).length + (input.parts ?? []).length > 0 || input.flushed
  const drier = [...(input.replaced ?? []), ...(input.parts ?? []).map(({ part }) => part)].some(
    (part) => part === 'drier' || part === 'accumulator',
  )
  return {
    level: id === 'nothing' ? 'fine' : 'check',
    headline: headline
      .replace('%OIL%', oilType.oil ?? "the oil on the compressor's label")
      .replace('%PARTS%', named),
    figures: id === 'nothing' ? [] : figures.slice(0, 6),
    next: [
      ...next,
      ...(compressor && !input.compressorHolds ? [NEXT.drain] : []),
      ...(opened && !drier ? [NEXT.drier] : []),
      ...(result.oilTotal || id === 'nothing' ? [] : [NEXT.total]),
    ].slice(0, 3),
  }
}
