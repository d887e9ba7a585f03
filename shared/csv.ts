import { visible } from './visible.ts'

export type Cell = string | number | boolean

/** What a spreadsheet takes for a formula when a cell begins with it, full-width signs included. */
const FORMULA = /^[=+\-@\t\r＝＋－＠]/u
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu
const QUOTED = /[",\r\n]|^\s|\s$/u

/**
 * One record of comma-separated values (RFC 4180).
 *
 * A text that a spreadsheet would run gets an apostrophe in front, by which it takes it for a text.
 */
export const csvLine = (cells: readonly Cell[], end = '\r\n'): string =>
  cells.map(csvCell).join(',') + end

function csvCell(cell: Cell): string {
  if (typeof cell !== 'string') return String(cell)
  const seen = visible(cell)
  const text = FORMULA.test(seen) && !NUMBER.test(seen) ? `'${seen}` : seen
  return QUOTED.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
