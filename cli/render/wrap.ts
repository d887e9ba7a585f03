/** Words never get less room than this, however deep the indent. */
const NARROWEST = 20

const ESCAPE = '\u001B'
/** Colour codes, which take no room. */
const CODES = new RegExp(`${ESCAPE}\\[[\\d;]*m`, 'gu')
const ASCII = /^[\u0020-\u007E]*$/u
/** Blocks whose letters take two columns (Unicode East Asian Width, W and F, without emoji). */
const WIDE =
  /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]/gu

/**
 * Columns that a text takes on a terminal.
 *
 * Not by a library: those compile tables of emoji that cost a quarter of the time to the first figure,
 * and no text of ours has any.
 */
export function columnsOf(text: string): number {
  const bare = text.includes(ESCAPE) ? text.replace(CODES, '') : text
  if (ASCII.test(bare)) return bare.length
  return [...bare.replace(/\p{M}/gu, '')].length + (bare.match(WIDE)?.length ?? 0)
}

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
  const lines = text
    .split('\n')
    .flatMap((line) => wrapped(line, Math.max(width - indent, NARROWEST)))
  const placed = lines.map((line) => ' '.repeat(indent) + line)
  if (head !== '' && columnsOf(head) >= indent) return [head, ...placed]
  return [padEnd(head, indent) + (lines[0] ?? ''), ...placed.slice(1)]
}

/** Breaks between words, and inside a word only where it alone is longer than a line. */
function wrapped(line: string, room: number): readonly string[] {
  // What fits is left as it is, spaces and all: figures are lined up by them.
  if (columnsOf(line) <= room) return [line]
  const lines: string[] = []
  let current = ''
  for (const word of line.split(' ').flatMap((part) => pieces(part, room))) {
    const longer = current === '' ? word : `${current} ${word}`
    if (columnsOf(longer) <= room || current.trim() === '') {
      current = longer
    } else {
      lines.push(current)
      current = word
    }
  }
  return [...lines, current]
}

function pieces(word: string, room: number): readonly string[] {
  // An address that is cut can no longer be followed.
  if (columnsOf(word) <= room || word.includes(ESCAPE) || word.includes('://')) return [word]
  const letters = [...word]
  const count = Math.ceil(letters.length / room)
  return Array.from({ length: count }, (_, index) =>
    letters.slice(index * room, (index + 1) * room).join(''),
  )
}

/** `text` in lines, all of them indented. */
export const paragraph = (text: string, indent: number, width: number): readonly string[] =>
  hanging('', text, indent, width)

export const padEnd = (text: string, columns: number): string =>
  text + ' '.repeat(Math.max(columns - columnsOf(text), 0))

export const padStart = (text: string, columns: number): string =>
  ' '.repeat(Math.max(columns - columnsOf(text), 0)) + text

export const widest = (texts: readonly string[]): number =>
  texts.reduce((columns, text) => Math.max(columns, columnsOf(text)), 0)
