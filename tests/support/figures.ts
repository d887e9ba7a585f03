/** A figure with or without its unit, a unit, or a name: no prose. */
const BARE = /^(?:[\d−.-]+(?: \S+){0,2}|fl oz|\S+)$/u

const isBare = (value: unknown): value is string | number | boolean | null =>
  value === null || typeof value !== 'object'

function inWords(value: unknown): string {
  if (Array.isArray(value)) {
    return value.every(isBare) ? value.map(inWords).join(' ') : value.map(inWords).join(' | ')
  }
  if (value === null) return '-'
  if (typeof value === 'object') return figuresIn(value)
  return BARE.test(String(value)) ? String(value) : '…'
}

/**
 * A row of data on one line, `key value, key value`, in its own order: what a figure or a name says,
 * `…` for prose, `[…]` around a row within the row. It is compared with a line written by hand from
 * the source, so that a changed figure, a lost key and a lost row are all seen.
 */
export function figuresIn(row: object): string {
  return Object.entries(row)
    .map(([key, value]) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? `${key} [${inWords(value)}]`
        : `${key} ${inWords(value)}`,
    )
    .join(', ')
}

/** Every row of a table by its key, or in its order. */
export const rowsOf = (
  table: Readonly<Record<string, object>> | readonly object[],
): readonly string[] =>
  Array.isArray(table)
    ? table.map(figuresIn)
    : Object.entries(table).map(([key, row]) => `${key}: ${figuresIn(row)}`)

/** The rows whose source was read, here or at second hand: not remembered, no practice of the trade. */
export const readIn = <R extends { readonly source: string }>(
  sources: Readonly<Record<string, { readonly mark: string }>>,
  rows: readonly R[],
): readonly R[] =>
  rows.filter(({ source }) => ['verified', 'secondary'].includes(sources[source]?.mark ?? ''))
