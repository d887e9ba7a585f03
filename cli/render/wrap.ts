import stringWidth from 'string-width'
import wrapAnsi from 'wrap-ansi'

/** Words never get less room than this, however deep the indent. */
const NARROWEST = 20

/**
 * `text` in lines of at most `width` columns that all begin at column `indent`; `head` stands before
 * the first, or on a line of its own when it is too long for that.
 */
export function hanging(
  head: string,
  text: string,
  indent: number,
  width: number,
): readonly string[] {
  const lines = wrapAnsi(text, Math.max(width - indent, NARROWEST), { hard: true }).split('\n')
  const placed = lines.map((line) => ' '.repeat(indent) + line)
  if (head !== '' && stringWidth(head) >= indent) return [head, ...placed]
  return [padEnd(head, indent) + (lines[0] ?? ''), ...placed.slice(1)]
}

/** `text` in lines, all of them indented. */
export const paragraph = (text: string, indent: number, width: number): readonly string[] =>
  hanging('', text, indent, width)

export const padEnd = (text: string, columns: number): string =>
  text + ' '.repeat(Math.max(columns - stringWidth(text), 0))

export const padStart = (text: string, columns: number): string =>
  ' '.repeat(Math.max(columns - stringWidth(text), 0)) + text

export const widest = (texts: readonly string[]): number =>
  texts.reduce((columns, text) => Math.max(columns, stringWidth(text)), 0)
