import { isQuantity } from '../../shared/answer/scalar.ts'
import type { Answer } from '../../shared/operation.ts'
import type { ShownQuantity } from '../../shared/quantity/index.ts'
import type { Page } from './pairs.ts'
import { treeLines } from './tree.ts'
import { padStart, widest } from './wrap.ts'

/** Rows of a sweep that a screen has room for; the sheet has them all. */
const MOST_ROWS = 9
const GAP = 2

export type SweepRow = Readonly<Record<string, unknown>>
interface Swept {
  readonly sweep?: { readonly rows: readonly SweepRow[] } | undefined
}

/** The columns of a sweep: figure, heading, decimals that a reader can use. */
const COLUMNS = [
  ['size', 'size', 1],
  ['suctionPressure', 'low side', 1],
  ['dischargePressure', 'high side', 0],
  ['superheat', 'superheat', 1],
  ['subcooling', 'subcooling', 1],
  ['ventTemperature', 'vent', 1],
  ['capacity', 'cooling', 2],
] as const

/** A sweep in the unit system that leads; behind a row how it ends up where that is not steady. */
export function sweepLines(rows: readonly SweepRow[], page: Page): readonly string[] {
  const columns = COLUMNS.map(([name, label, decimals]) => {
    const figures = rows.map((row) => (isQuantity(row[name]) ? row[name] : undefined))
    const cells = figures.map((figure) => (figure ? textOf(figure, decimals) : '–'))
    const unit = figures.find((figure) => figure)?.unit ?? ''
    return { label, unit, cells, width: widest([label, unit, ...cells]) + GAP }
  })
  const line = (of: (column: (typeof columns)[number]) => string) =>
    columns.map((column) => padStart(of(column), column.width)).join('')
  return [
    page.ink.quiet(line(({ label }) => label)),
    page.ink.quiet(line(({ unit }) => unit)),
    ...rows.map((row, index) => {
      const state = row.state === 'steady' ? '' : `  ${SHORT[String(row.state)] ?? row.state}`
      return line(({ cells }) => cells[index] ?? '') + state
    }),
  ]
}

/** How a row ends up, in as many letters as there is room for. */
const SHORT: Readonly<Record<string, string>> = {
  cycling: 'cycles',
  'high-pressure-trip': 'trips',
  'low-pressure-trip': 'trips',
  iced: 'ices',
}

const textOf = ({ value }: ShownQuantity, decimals: number) =>
  Math.abs(value) >= 1000 ? value.toFixed(0) : value.toFixed(decimals)

/** The rows that a screen has room for, both ends among them. */
export function screenSweep({ result }: Answer, page: Page): readonly string[] {
  const { sweep } = result as Swept
  if (sweep === undefined) return []
  const { rows } = sweep
  const stride = Math.ceil((rows.length - 1) / (MOST_ROWS - 1))
  const kept = rows.filter((_, index) => index % stride === 0 || index === rows.length - 1)
  return sweepLines(kept, page)
}

/** The whole result, a sweep as one table behind it. */
export function simulateLines({ result }: Answer, page: Page): readonly string[] {
  const { sweep, ...rest } = result as Swept
  return [...treeLines(rest, 2, page), ...(sweep ? ['', ...sweepLines(sweep.rows, page)] : [])]
}
