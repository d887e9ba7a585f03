import data from '../../data/service/cut-outs.json' with { type: 'json' }
import { parseQuantity, type Quantity } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { sourceTable } from '../source-table.ts'
import type { Source } from '../sources.ts'

/** The pressure at which makers let a switch stop the compressor. */
export interface CutOut {
  readonly pressure: Quantity<'gaugePressure'>
  /** `assumed`: that of a refrigerant with nearly the same pressures stands for it. */
  readonly basis: 'published' | 'assumed' | 'from memory'
  readonly sources: readonly Source[]
}

const sourceOf = sourceTable(data.sources)
const STANDS_FOR: Readonly<Record<string, string>> = data.standsFor

/**
 * The lowest high-pressure cut-out known of machines with this refrigerant: at or above it a running
 * machine is stopped, whatever else was asked.
 *
 * @returns undefined where none is known (R-744 among others): then only the critical pressure bounds.
 */
export function cutOutOf(r: Refrigerant): CutOut | undefined {
  const id = r.info.id
  const other = STANDS_FOR[id]
  const rows = data.rows
    .filter(({ refrigerant }) => refrigerant === (other ?? id))
    .map(({ pressure, source }) => ({
      pressure: parseQuantity(pressure, ['gaugePressure']),
      source: sourceOf(source as keyof typeof data.sources),
    }))
    .sort((a, b) => a.pressure.si - b.pressure.si)
  const [lowest] = rows
  if (!lowest) return undefined
  return {
    pressure: lowest.pressure,
    basis:
      other !== undefined
        ? 'assumed'
        : lowest.source.mark === 'memory'
          ? 'from memory'
          : 'published',
    sources: rows.map(({ source }) => source),
  }
}

/**
 * Whether a gauge pressure (Pa above the air around) reaches the cut-out. By the reading itself and not by its
 * band: a better gauge must not turn a stop into a go.
 */
export const reachesCutOut = (gaugePa: number, { pressure }: CutOut): boolean =>
  gaugePa >= pressure.si
