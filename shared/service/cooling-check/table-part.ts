import * as z from 'zod'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { type Quantity, quantityOut, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { PRINTED_AT_SEA_LEVEL } from '../printed-gauge.ts'
import {
  type Band,
  type BandsResult,
  bandOf,
  COMPARISONS,
  type Compared,
  compare,
  NAMES,
  printed,
  SIDES,
  type Side,
} from './band.ts'
import {
  coolingFacts,
  coolingSource,
  PERFORMANCE_TABLES,
  type PerformanceTable,
  type Range,
  type TestConditions,
} from './tables.ts'

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

type TablesResult = readonly Computed<z.output<typeof tableOut>>[]
interface TableReadings {
  readonly ambient: Quantity<'temperature'>
  /** Air into the evaporator, where it is known. */
  readonly returnAir: Quantity<'temperature'>
  readonly high?: Compared | undefined
  readonly low?: Compared | undefined
  readonly vent?: Compared | undefined
}

interface Used {
  readonly table: PerformanceTable
  readonly status: 'fits' | 'other-condition' | 'no-row-for-this-temperature'
  readonly differs: readonly string[]
  readonly bands: Readonly<Record<Side, Band | undefined>>
}

/** Readings against every published table of this refrigerant, and the band over those whose conditions fit. */
export function tablePart(
  r: Refrigerant,
  readings: TableReadings,
  conditions: TestConditions,
  place: Place,
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
      message: fillIn(coolingFacts.warnings['no-table-for-refrigerant'], {
        refrigerant: r.info.id,
      }),
    })
  }
  const used = all.map((table) => use(table, readings, conditions))
  const fitting = used.filter(({ status }) => status === 'fits')
  if (all.length > 0 && fitting.length === 0) {
    notes.warnings.push({
      code: 'no-table-fits',
      message: coolingFacts.warnings['no-table-fits'],
    })
  }
  if (fitting.length > 0 && (readings.high || readings.low)) {
    notes.assumptions.push(PRINTED_AT_SEA_LEVEL)
  }
  notes.sources.push(...used.map(({ table }) => coolingSource(table.source as never)))
  const of = (side: Side) => fitting.flatMap(({ bands }) => bands[side] ?? [])
  const bands = {
    high: bandOf('high', readings.high, of('high'), place),
    low: bandOf('low', readings.low, of('low'), place),
    vent: bandOf('vent', readings.vent, of('vent'), place),
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
      ...Object.fromEntries(SIDES.flatMap((side) => rowOf(side, own[side], place))),
    })),
    bands,
    fitting: fitting.map(({ table }) => table),
  }
}

function rowOf(
  side: Side,
  band: Band | undefined,
  place: Place,
): readonly (readonly [string, object])[] {
  if (!band) return []
  const [from, to] = band.range
  const row = {
    from: printed(side, from, place),
    to: printed(side, to, place),
    reading: band.reading,
  }
  return [[side, row]]
}

function use(table: PerformanceTable, readings: TableReadings, conditions: TestConditions): Used {
  const bands = {
    high: compare(readings.ambient, (at) => table.high(at), readings.high),
    low: compare(readings.ambient, (at) => table.low(at), readings.low),
    vent: compare(
      readings.returnAir,
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
