import type { Computed } from '../../operation.ts'
import {
  type Comparison,
  compareWithBand,
  gaugePressure,
  type Quantity,
  quantityOut,
  temperature,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import * as z from '../../schema.ts'
import type { Notes } from '../notes.ts'
import { say } from '../say.ts'
import {
  coolingSource,
  PERFORMANCE_TABLES,
  type PerformanceTable,
  type Range,
  type TestConditions,
} from './tables.ts'

const SIDES = ['high', 'low', 'vent'] as const
export type Side = (typeof SIDES)[number]
const COMPARISONS = ['below', 'inside', 'above', 'cannot-tell'] as const

const rowOut = z.strictObject({
  from: quantityOut,
  to: quantityOut,
  reading: z.enum(COMPARISONS).optional().describe('Where the reading stands in this table'),
})

export const tableOut = z.strictObject({
  id: z.string(),
  condition: z.string(),
  status: z
    .enum(['fits', 'other-condition', 'no-row-for-this-temperature'])
    .describe('Whether the table was used for the band'),
  differs: z.array(z.string()).describe('Named conditions that differ from those of the table'),
  high: rowOut.optional(),
  low: rowOut.optional(),
  vent: rowOut.optional(),
})

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

type TablesResult = readonly Computed<z.output<typeof tableOut>>[]
type BandsResult = Computed<z.output<typeof bandsOut>>

interface TableReadings {
  readonly ambient: Quantity<'temperature'>
  /** Air into the evaporator, where it is known. */
  readonly airIn: Quantity<'temperature'>
  readonly high?: Quantity<'gaugePressure'> | undefined
  readonly low?: Quantity<'gaugePressure'> | undefined
  readonly vent?: Quantity<'temperature'> | undefined
}

interface Used {
  readonly table: PerformanceTable
  readonly status: 'fits' | 'other-condition' | 'no-row-for-this-temperature'
  readonly differs: readonly string[]
  readonly bands: Readonly<Record<Side, Band | undefined>>
}

interface Band {
  readonly range: Range
  readonly reading: Comparison | undefined
}

/** Readings against every published table of this refrigerant, and the band over those whose conditions fit. */
export function tablePart(
  r: Refrigerant,
  readings: TableReadings,
  conditions: TestConditions,
  notes: Notes,
): {
  readonly tables: TablesResult
  readonly bands: BandsResult
  readonly fitting: readonly PerformanceTable[]
} {
  const all = PERFORMANCE_TABLES.filter(({ refrigerant }) => refrigerant === r.info.id)
  if (all.length === 0) {
    notes.warnings.push({
      code: 'no-table-for-refrigerant',
      message: `No published performance table for ${r.info.id} is at hand: use the one of the equipment maker.`,
    })
  }
  const used = all.map((table) => use(table, readings, conditions))
  const fitting = used.filter(({ status }) => status === 'fits')
  if (all.length > 0 && fitting.length === 0) {
    notes.warnings.push({
      code: 'no-table-fits',
      message:
        'No published table has these conditions and this ambient temperature. Run the machine as one of the tables says, or use the table of the equipment maker.',
    })
  }
  notes.sources.push(...used.map(({ table }) => coolingSource(table.source as never)))
  const bands = {
    high: bandOf('high', readings.high, fitting),
    low: bandOf('low', readings.low, fitting),
    vent: bandOf('vent', readings.vent, fitting),
  }
  for (const side of SIDES) {
    const { from, to } = bands[side]
    if (!from || !to) continue
    notes.steps.push({
      what: `Published band, ${NAMES[side]}`,
      formula:
        'lowest and highest figure of the tables that fit, by straight line between their printed rows; nothing beyond them',
      values: {
        ambient: readings.ambient,
        tables: fitting.map(({ table }) => table.id).join(', '),
      },
      gives: `${say(from)} to ${say(to)}`,
    })
  }
  return {
    tables: used.map(({ table, status, differs, bands: own }) => ({
      id: table.id,
      condition: table.condition,
      status,
      differs: [...differs],
      ...Object.fromEntries(SIDES.flatMap((side) => rowOf(side, own[side]))),
    })),
    bands,
    fitting: fitting.map(({ table }) => table),
  }
}

const NAMES: Readonly<Record<Side, string>> = {
  high: 'high side',
  low: 'low side',
  vent: 'vent',
}

const quantityOf = (side: Side, si: number) =>
  side === 'vent' ? temperature(si) : gaugePressure(si)

function rowOf(side: Side, band: Band | undefined): readonly (readonly [string, object])[] {
  if (!band) return []
  const [from, to] = band.range
  const row = { from: quantityOf(side, from), to: quantityOf(side, to), reading: band.reading }
  return [[side, row]]
}

function use(table: PerformanceTable, readings: TableReadings, conditions: TestConditions): Used {
  const bands = {
    high: compare(readings.ambient, (at) => table.high(at), readings.high),
    low: compare(readings.ambient, (at) => table.low(at), readings.low),
    vent: compare(
      readings.airIn,
      (at) => openBelow(table, at),
      readings.vent,
      (at) => table.vent(at),
    ),
  }
  const differs = table.differences(conditions)
  const status =
    differs.length > 0 ? 'other-condition' : bands.high ? 'fits' : 'no-row-for-this-temperature'
  return { table, status, differs, bands }
}

/** One printed vent figure is a most: colder is inside. */
function openBelow(table: PerformanceTable, airK: number): Range | undefined {
  const printed = table.vent(airK)
  return printed && table.oneVentFigure ? [0, printed[1]] : printed
}

/** Compares at both ends of the uncertainty of the temperature too: where they disagree, it cannot tell. */
function compare(
  at: Quantity<'temperature'>,
  band: (kelvin: number) => Range | undefined,
  reading: Quantity | undefined,
  shown = band,
): Band | undefined {
  const range = shown(at.si)
  if (!range) return undefined
  if (!reading) return { range, reading: undefined }
  const width = at.plusMinus ?? 0
  const found = new Set(
    [at.si, at.si - width, at.si + width].flatMap((kelvin) => {
      const limits = band(kelvin)
      return limits ? [compareWithBand(reading, limits[0], limits[1])] : []
    }),
  )
  const [only] = found
  return { range, reading: found.size === 1 ? only : 'cannot-tell' }
}

function bandOf(
  side: Side,
  reading: Quantity | undefined,
  fitting: readonly Used[],
): BandsResult[Side] {
  const own = fitting.flatMap(({ bands }) => bands[side] ?? [])
  if (own.length === 0) return reading ? { reading, verdict: 'no-table' as const } : {}
  const from = quantityOf(side, Math.min(...own.map(({ range }) => range[0])))
  const to = quantityOf(side, Math.max(...own.map(({ range }) => range[1])))
  if (!reading) return { from, to }
  const verdict = verdictOf(own.map((entry) => entry.reading ?? 'cannot-tell'))
  return {
    reading,
    from,
    to,
    verdict,
    sentence: `${sentenceCase(NAMES[side])}: ${WORDS[verdict]} (${own.length === 1 ? 'one table' : `${own.length} tables`}).`,
  }
}

const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

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
