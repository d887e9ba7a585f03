import data from '../../../data/service/oil.json' with { type: 'json' }
import { combine, exactly, quantity, type Tied } from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'

export const oilSource = sourceTable(data.sources)
export type OilSource = keyof typeof data.sources

/** Parts that take oil by the table; a sudden leak is counted like one. */
export const TABLE_PARTS = ['condenser', 'evaporator', 'drier', 'accumulator', 'hose'] as const
type TablePart = (typeof TABLE_PARTS)[number]

/** Oil of one part, m³: what is usual, and the least and most that anybody prints. */
export interface Amount {
  readonly usual: Tied
  readonly least: Tied
  readonly most: Tied
  readonly text: string
  readonly sources: readonly Source[]
}

/** m³ of an amount as printed. */
export const cubic = (amount: number, unit: string) => quantity('volume', amount, unit).si

/**
 * Oil to add for a replaced part or a sudden leak, by published rows.
 *
 * The amount is what most rows print; least and most are the smallest and largest of all rows.
 *
 * @param drained - What was drained from the old accumulator, m³; the accumulator's rows count from it.
 */
export function tableAmount(part: TablePart | 'sudden-leak', drained: Tied = exactly(0)): Amount {
  const rows: readonly Row[] = data.parts.filter((row) => row.part === part)
  const standard: Row = data.defaults[part]
  const printed = standard.beyondDrained
  const of = (pick: (...amounts: number[]) => number, from: readonly Row[]) =>
    combine([drained], (out = 0) => pick(...from.map((row) => amountOf(row, out))))
  return {
    usual: of((amount = 0) => amount, [standard]),
    least: of(Math.min, [standard, ...rows]),
    most: of(Math.max, [standard, ...rows]),
    text: printed === undefined ? TEXTS[part] : `as much as was drained and ${printed} fl oz`,
    sources: [...new Set(rows.map((row) => row.source))].map((id) => oilSource(id as OilSource)),
  }
}

const TEXTS: Readonly<Record<TablePart | 'sudden-leak', string>> = {
  condenser: '1 fl oz, what most makers print',
  evaporator: '3 fl oz, what most makers print',
  drier: '1 fl oz; makers differ much',
  accumulator: '',
  hose: 'nothing, or a few millilitres',
  'sudden-leak': '2 to 3 fl oz for a sudden large leak',
}

interface Row {
  readonly source?: string
  readonly amount?: number
  readonly beyondDrained?: number
  readonly unit: string
}

const amountOf = ({ amount, beyondDrained, unit }: Row, drainedM3: number) =>
  amount === undefined ? drainedM3 + cubic(beyondDrained ?? 0, unit) : cubic(amount, unit)

/** Totals that makers print, for orientation only, with who prints them. */
export const PUBLISHED_TOTALS = {
  text: `For orientation, published totals: ${data.totals.map(({ text }) => text).join('; ')}.`,
  sources: data.totals.map(({ source }) => oilSource(source as OilSource)),
}

export const LONG_HOSE_NOTES = data.longHoseNotes.map(({ text, source }) => ({
  text,
  source: oilSource(source as OilSource),
}))
