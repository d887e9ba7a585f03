import * as z from 'zod'
import { capital } from '../../answer/words.ts'
import type { Place } from '../../instrument/index.ts'
import type { Computed } from '../../operation.ts'
import {
  type Comparison,
  compareWithBand,
  type Quantity,
  quantityOut,
  temperature,
  type Uncertain,
} from '../../quantity/index.ts'
import type { Range } from './tables.ts'

export const SIDES = ['high', 'low', 'vent'] as const
export type Side = (typeof SIDES)[number]
export const COMPARISONS = ['below', 'inside', 'above', 'cannot-tell'] as const

const bandOut = z.strictObject({
  reading: quantityOut.optional(),
  from: quantityOut.optional().describe('Lowest figure of the tables that fit'),
  to: quantityOut.optional().describe('Highest figure of the tables that fit'),
  verdict: z
    .enum([
      'in-every-table',
      'in-some-tables',
      'below-all',
      'above-all',
      'between-tables',
      'cannot-tell',
      'no-table',
    ])
    .optional(),
  sentence: z.string().optional(),
})

export const bandsOut = z.strictObject({
  high: bandOut,
  low: bandOut,
  vent: bandOut,
})

export type BandsResult = Computed<z.output<typeof bandsOut>>

/** A row of one table at this temperature, and where the reading stands in it. */
export interface Band {
  readonly range: Range
  readonly reading: Comparison | undefined
}

/** As a side stands in a sentence. */
export const NAMES: Readonly<Record<Side, string>> = {
  high: 'high side',
  low: 'low side',
  vent: 'vent',
}

/** A printed figure of a side: Pa absolute as a gauge here shows it, or K of the vent. */
export const printed = (side: Side, si: number, place: Place) =>
  side === 'vent' ? temperature(si) : place.gauge(si).within(undefined)

/** A reading as it is shown, and as it is compared: K, or Pa absolute. */
export interface Compared<Q extends Quantity = Quantity> {
  readonly shown: Q
  readonly si: Uncertain
}

/** Compares at both ends of the uncertainty of the temperature too: where they disagree, it cannot tell. */
export function compare(
  at: Quantity<'temperature'>,
  band: (kelvin: number) => Range | undefined,
  reading: Compared | undefined,
  shown = band,
): Band | undefined {
  const range = shown(at.si)
  if (!range) return undefined
  if (!reading) return { range, reading: undefined }
  const width = at.plusMinus ?? 0
  const found = new Set(
    [at.si, at.si - width, at.si + width].flatMap((kelvin) => {
      const limits = band(kelvin)
      return limits ? [compareWithBand(reading.si, limits[0], limits[1])] : []
    }),
  )
  const [only] = found
  return { range, reading: found.size === 1 ? only : 'cannot-tell' }
}

/** The reading against all tables that fit: their span, and the verdict over them. */
export function bandOf(
  side: Side,
  compared: Compared | undefined,
  own: readonly Band[],
  place: Place,
): BandsResult[Side] {
  const reading = compared?.shown
  if (own.length === 0) return reading ? { reading, verdict: 'no-table' as const } : {}
  const from = printed(side, Math.min(...own.map(({ range }) => range[0])), place)
  const to = printed(side, Math.max(...own.map(({ range }) => range[1])), place)
  if (!reading) return { from, to }
  const verdict = verdictOf(own.map((entry) => entry.reading ?? 'cannot-tell'))
  return {
    reading,
    from,
    to,
    verdict,
    sentence: `${capital(NAMES[side])}: ${WORDS[verdict]} (${own.length === 1 ? 'one table' : `${own.length} tables`}).`,
  }
}

const WORDS = {
  'in-every-table': 'normal by every table that fits',
  'in-some-tables': 'normal by some of the tables that fit, not by all: see their conditions',
  'below-all': 'below every table that fits',
  'above-all': 'above every table that fits',
  'between-tables': 'above some tables that fit and below others',
  'cannot-tell':
    'too near the edge for these instruments; a finer gauge or thermometer would settle it',
} as const

function verdictOf(found: readonly Comparison[]): keyof typeof WORDS {
  const every = (name: Comparison) => found.every((entry) => entry === name)
  if (every('inside')) return 'in-every-table'
  if (every('below')) return 'below-all'
  if (every('above')) return 'above-all'
  const outside = found.includes('below') || found.includes('above')
  if (found.includes('inside')) return outside ? 'in-some-tables' : 'cannot-tell'
  return found.includes('cannot-tell') ? 'cannot-tell' : 'between-tables'
}
