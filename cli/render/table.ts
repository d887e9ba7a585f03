import type { Answer } from '../../shared/operation.ts'
import { type TableResult, tableText } from '../../shared/service/table-render.ts'
import type { Page } from './pairs.ts'
import { paragraph, widest } from './wrap.ts'

/** A table that is wider than the page is cut into several, each beginning with the first column. */
export const tableLines = ({ result }: Answer, page: Page): readonly string[] =>
  partsOf(result as TableResult, page).flatMap((part, index) => [
    ...(index === 0 ? [] : ['']),
    ...textLines(result as TableResult, part),
  ])

/** As many columns as the page is wide, and the names of the others. */
export function firstTableLines({ result }: Answer, page: Page): readonly string[] {
  const table = result as TableResult
  const [shown, ...others] = partsOf(table, page)
  if (!shown) return []
  const left = others.flatMap((columns) => columns.slice(1).map(({ label }) => label))
  return [
    ...textLines(table, shown),
    ...(left.length === 0
      ? []
      : ['', ...paragraph(page.ink.quiet(`${left.join(', ')}: --full`), 0, page.width)]),
  ]
}

type Columns = TableResult['columns']

const textLines = (table: TableResult, columns: Columns) =>
  tableText({ ...table, columns })
    .trimEnd()
    .split('\n')

function partsOf(table: TableResult, { width }: Page): readonly Columns[] {
  const [first, ...others] = table.columns
  if (!first) return []
  const parts: (typeof first)[][] = []
  for (const column of others) {
    const last = parts.at(-1)
    if (last && widest(textLines(table, [...last, column])) <= width) last.push(column)
    else parts.push([first, column])
  }
  return parts.length === 0 ? [[first]] : parts
}
