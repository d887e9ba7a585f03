import data from '../../../data/service/performance-tables.json' with { type: 'json' }
import type { Machine } from '../../fields/index.ts'
import { readQuantity } from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'
import { printedPa } from '../printed-gauge.ts'

export const coolingSource = sourceTable(data.sources)
export const coolingFacts = data

export const AIR_MODES = ['recirculated', 'outside'] as const
export const WINDOWS = ['open', 'closed'] as const
export const ENGINE_SPEEDS = ['idle', 'about-1000-rpm', 'higher'] as const

/** How the machine was run while it was read. */
export interface TestConditions {
  readonly machine?: Machine | undefined
  readonly air?: (typeof AIR_MODES)[number] | undefined
  readonly windows?: (typeof WINDOWS)[number] | undefined
  readonly engine?: (typeof ENGINE_SPEEDS)[number] | undefined
  /** Fraction of one. */
  readonly humidity?: number | undefined
}

/** From and to, SI; one printed figure is both. */
export type Range = readonly [from: number, to: number]

interface RowData {
  readonly id: string
  readonly machine: string
  readonly refrigerant: string
  readonly condition: string
  readonly source: string
  readonly air?: string
  readonly windows?: string
  readonly engine?: string
  readonly humidity?: readonly string[]
  readonly pressures?: readonly {
    readonly ambient: string
    readonly high: readonly string[]
    readonly low: readonly string[]
  }[]
  readonly vents?: readonly { readonly air: string; readonly vent: readonly string[] }[]
  readonly anyAmbient?: { readonly high: readonly string[]; readonly low: readonly string[] }
}

/** A published performance table; absolute pressures in Pa, temperatures in K. */
export interface PerformanceTable {
  readonly id: string
  readonly condition: string
  readonly source: string
  /** Named conditions in which the asked ones differ. */
  differences(conditions: TestConditions): readonly string[]
  readonly refrigerant: string
  /** Undefined where the table ends before this ambient temperature. */
  high(ambientK: number): Range | undefined
  low(ambientK: number): Range | undefined
  /** By the temperature of the air that goes into the evaporator; undefined where none is printed. */
  vent(airK: number): Range | undefined
  /** The table prints one vent figure, which the vent should not exceed. */
  readonly oneVentFigure: boolean
  /** False where one pair of pressures is printed for all weather. */
  readonly followsAmbient: boolean
}

const pressures = (texts: readonly string[]) =>
  range(texts.map((text) => printedPa(readQuantity(text, ['gaugePressure']).si)))
const kelvin = (text: string) => readQuantity(text, ['temperature']).si

function range(values: readonly number[]): Range {
  const [from = 0, to = from] = values
  return [from, to]
}

interface Knot {
  readonly at: number
  readonly range: Range
}

/** Straight line between printed rows; nothing beyond the first and the last. */
function between(knots: readonly Knot[], at: number): Range | undefined {
  const next = knots.findIndex((knot) => knot.at >= at)
  const above = knots[next]
  if (!above) return undefined
  if (above.at === at) return above.range
  const below = knots[next - 1]
  if (!below) return undefined
  const share = (at - below.at) / (above.at - below.at)
  const mix = (index: 0 | 1) =>
    below.range[index] + share * (above.range[index] - below.range[index])
  return [mix(0), mix(1)]
}

const PRINTED = (data.rows as readonly RowData[]).flatMap(({ pressures: rows = [] }) =>
  rows.map(({ ambient }) => kelvin(ambient)),
)

/** A maker that prints one pair of pressures means cooling weather: what other tables span stands for it. */
const inPrintedWeather = (ambientK: number) =>
  ambientK >= Math.min(...PRINTED) && ambientK <= Math.max(...PRINTED)

function read(row: RowData): PerformanceTable {
  const knots = (side: 'high' | 'low') =>
    (row.pressures ?? []).map((entry) => ({
      at: kelvin(entry.ambient),
      range: pressures(entry[side]),
    }))
  const side = (name: 'high' | 'low') => {
    const rows = knots(name)
    const anywhere = row.anyAmbient && pressures(row.anyAmbient[name])
    return (ambientK: number) =>
      anywhere ? (inPrintedWeather(ambientK) ? anywhere : undefined) : between(rows, ambientK)
  }
  const vents = (row.vents ?? []).map(({ air, vent }) => ({
    at: kelvin(air),
    range: range(vent.map(kelvin)),
  }))
  const humidity =
    row.humidity && range(row.humidity.map((text) => readQuantity(text, ['fraction']).si))
  return {
    id: row.id,
    condition: row.condition,
    source: row.source,
    refrigerant: row.refrigerant,
    high: side('high'),
    low: side('low'),
    vent: (airK) => between(vents, airK),
    oneVentFigure: (row.vents ?? []).every(({ vent }) => vent.length === 1),
    followsAmbient: row.anyAmbient === undefined,
    differences(conditions) {
      const named = (['machine', 'air', 'windows', 'engine'] as const).filter(
        (name) =>
          conditions[name] !== undefined &&
          row[name] !== undefined &&
          conditions[name] !== row[name],
      )
      const rh = conditions.humidity
      const outside = humidity && rh !== undefined && (rh < humidity[0] || rh > humidity[1])
      return outside ? [...named, 'humidity'] : named
    },
  }
}

export const PERFORMANCE_TABLES: readonly PerformanceTable[] = (
  data.rows as readonly RowData[]
).map(read)
