import {
  isQuantity,
  isScalar,
  type Scalar,
  scalarText,
  valueText,
} from '../../shared/answer/scalar.ts'
import { labelOf } from '../../shared/answer/words.ts'
import type { Page } from './pairs.ts'
import { padEnd, padStart, widest } from './wrap.ts'

export type Row = Readonly<Record<string, unknown>>

const GAP = 3

interface Column {
  readonly head: string
  readonly cells: readonly string[]
  readonly right: boolean
}

/**
 * Rows of scalars as a table with one head, or undefined where that would not be readable:
 * rows that hold more than scalars, or more columns than the width takes.
 */
export function gridLines(
  rows: readonly Row[],
  indent: number,
  page: Page,
): readonly string[] | undefined {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))]
  const scalars = rows.every((row) => Object.values(row).every(isScalar))
  if (rows.length < 2 || names.length < 2 || !scalars) return undefined
  const columns = names.flatMap((name) => columnsOf(name, rows, page.precise))
  const widths = columns.map(({ head, cells }) => widest([head, ...cells]))
  const total = indent + widths.reduce((sum, width) => sum + width + GAP, -GAP)
  if (total > page.width) return undefined
  const line = (texts: readonly string[]) =>
    texts
      .map((text, index) => {
        const width = widths[index] ?? 0
        return columns[index]?.right ? padStart(text, width) : padEnd(text, width)
      })
      .join(' '.repeat(GAP))
      .trimEnd()
  const margin = ' '.repeat(indent)
  return [
    margin + page.ink.quiet(line(columns.map(({ head }) => head))),
    ...rows.map((_, row) => margin + line(columns.map(({ cells }) => cells[row] ?? ''))),
  ]
}

/** A quantity takes a column for each unit system, with the unit in the head where all rows share it. */
function columnsOf(name: string, rows: readonly Row[], precise: boolean): readonly Column[] {
  const values = rows.map((row) => row[name] as Scalar | undefined)
  const label = labelOf(name)
  const present = values.filter((value) => value !== undefined)
  if (!present.every(isQuantity)) {
    const cells = values.map((value) => (value === undefined ? '' : scalarText(value, precise)))
    return [{ head: label, cells, right: present.every((value) => typeof value === 'number') }]
  }
  const units = new Set(present.map(({ unit, also }) => `${unit}|${also?.unit ?? ''}`))
  if (units.size > 1) {
    const cells = values.map((value) => (value === undefined ? '' : scalarText(value, precise)))
    return [{ head: label, cells, right: true }]
  }
  const [first] = present
  const quantities = values.map((value) => (isQuantity(value) ? value : undefined))
  const own: Column = {
    head: `${label}, ${first?.unit ?? ''}`,
    cells: alignPoints(
      quantities.map((value) => (value ? unitless(valueText(value), value.unit) : '')),
    ),
    right: true,
  }
  const also = first?.also
  if (!also) return [own]
  const cells = quantities.map((value) =>
    value?.also ? unitless(valueText(value.also), value.also.unit) : '',
  )
  return [own, { head: also.unit, cells: alignPoints(cells), right: true }]
}

const unitless = (text: string, unit: string) => text.slice(0, text.length - unit.length - 1)

/** Pads after the point so that right-aligned figures line up on it. */
function alignPoints(texts: readonly string[]): readonly string[] {
  const places = (text: string) => (text.includes('±') ? 0 : (text.split('.')[1]?.length ?? -1) + 1)
  const most = Math.max(...texts.map(places), 0)
  return texts.map((text) =>
    text === '' ? '' : text + ' '.repeat(most - Math.min(places(text), most)),
  )
}
