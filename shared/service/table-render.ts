import { csvLine } from '../csv.ts'
import { quantity, type ShownQuantity, type ShownValue, UNITS } from '../quantity/index.ts'

/** What the renderers need of the result of `table`. */
export interface TableResult {
  readonly columns: readonly { readonly key: string; readonly label: string }[]
  readonly rows: readonly Readonly<Record<string, ShownQuantity>>[]
}

interface PlainColumn {
  readonly heading: string
  readonly unit: string
  readonly cells: readonly string[]
}

/** As comma-separated values (RFC 4180): one unit a column, named in the header. */
export function tableCsv(table: TableResult): string {
  const columns = plainColumns(table)
  const header = columns.map(({ heading, unit }) => `${heading} (${unit})`)
  return [header, ...rowsOf(columns)].map((cells) => csvLine(cells)).join('')
}

/** As text to read or print: headings, units, and figures right-aligned under them. */
export function tableText(table: TableResult): string {
  const columns = plainColumns(table).map((column) => ({ ...column, cells: aligned(column.cells) }))
  const widths = columns.map(({ heading, unit, cells }) =>
    Math.max(lengthOf(heading), lengthOf(unit), ...cells.map(lengthOf)),
  )
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, index) => cell.padStart((widths[index] ?? 0) + cell.length - lengthOf(cell)))
      .join('  ')
      .trimEnd()
  return [
    line(columns.map(({ heading }) => heading)),
    line(columns.map(({ unit }) => unit)),
    line(widths.map((width) => '─'.repeat(width))),
    ...rowsOf(columns).map(line),
    '',
  ].join('\n')
}

/** Figures with their points under each other. */
function aligned(cells: readonly string[]): readonly string[] {
  const decimals = cells.map((cell) => /\.(\d+)$/u.exec(cell)?.[0].length ?? 0)
  const most = Math.max(0, ...decimals)
  return cells.map((cell, index) => cell + ' '.repeat(most - (decimals[index] ?? 0)))
}

const rowsOf = (columns: readonly PlainColumn[]): readonly (readonly string[])[] =>
  (columns[0]?.cells ?? []).map((_, row) => columns.map(({ cells }) => cells[row] ?? ''))

/** A column for each unit system that the figures are shown in. */
function plainColumns({ columns, rows }: TableResult): readonly PlainColumn[] {
  return columns.flatMap(({ key, label }) => {
    const figures = rows.flatMap((row) => row[key] ?? [])
    const sides: readonly (readonly ShownValue[])[] = figures.some(({ also }) => also)
      ? [figures, figures.map((figure) => figure.also ?? figure)]
      : [figures]
    return sides.map((side) => plainColumn(label, side))
  })
}

function plainColumn(heading: string, figures: readonly ShownValue[]): PlainColumn {
  const unit = commonUnit(figures.map((figure) => figure.unit))
  const values = figures.map((figure) =>
    figure.unit === unit ? figure.value : convert(figure, unit),
  )
  const decimals = Math.max(0, ...values.map(decimalsOf))
  const figuresShown = Math.max(1, ...values.map(significantOf))
  const cells = values.map((value) =>
    value.toFixed(Math.min(decimals, Math.max(0, figuresShown - wholeDigits(value)))),
  )
  return { heading, unit, cells }
}

/** Below the barometer a gauge column turns to vacuum units; one column has one unit, so it is turned back. */
function commonUnit(units: readonly string[]): string {
  const [first = '', ...others] = [...new Set(units)]
  return others.find(() => isVacuum(first)) ?? first
}

const isVacuum = (unit: string) => unit.endsWith(' vac') || unit === 'micron'

function convert({ value, unit }: ShownValue, wanted: string): number {
  const kinds = Object.entries(UNITS) as [keyof typeof UNITS, (typeof UNITS)[keyof typeof UNITS]][]
  const kind = kinds.find(([, units]) =>
    [unit, wanted].every((symbol) => units.some((entry) => entry.symbol === symbol)),
  )?.[0]
  if (kind === undefined) return value
  return Number(quantity(kind, value, unit).to(wanted).toFixed(1))
}

const decimalsOf = (value: number) => {
  const [, fraction = '', exponent = '0'] =
    /^-?\d+(?:\.(\d+))?(?:e([+-]\d+))?$/u.exec(String(value)) ?? []
  return Math.max(0, fraction.length - Number(exponent))
}

/** Significant figures that the shortest writing of a number shows. */
const significantOf = (value: number) =>
  String(value)
    .replace(/e.*$/u, '')
    .replace(/^-?0*\.?0*|\./gu, '').length

/** Places before the point; below one, less by every zero after it. */
const wholeDigits = (value: number) =>
  value === 0 ? 1 : Math.floor(Math.log10(Math.abs(value))) + 1

const lengthOf = (text: string) => [...text].length
