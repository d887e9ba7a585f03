import type { Answer } from '../../shared/operation.ts'
import { type TableResult, tableText } from '../../shared/service/table-render.ts'
import type { Page } from './pairs.ts'
import { widest } from './wrap.ts'

/** A table that is wider than the page is cut into several, each beginning with the first column. */
export function tableLines({ result }: Answer, { width }: Page): readonly string[] {
  const table = result as TableResult
  const [first, ...others] = table.columns
  if (!first) return []
  const linesOf = (columns: TableResult['columns']) =>
    tableText({ ...table, columns })
      .trimEnd()
      .split('\n')
  const fits = (columns: TableResult['columns']) => widest(linesOf(columns)) <= width
  const parts: (typeof first)[][] = []
  for (const column of others) {
    const last = parts.at(-1)
    if (last && fits([...last, column])) last.push(column)
    else parts.push([first, column])
  }
  if (parts.length === 0) return linesOf([first])
  return parts.flatMap((columns, index) => (index === 0 ? [] : ['']).concat(linesOf(columns)))
}
