/** Longest line that is read, characters; a work order with a long vacuum log is a tenth of it. */
export const LONGEST_LINE = 1024 * 1024

/** A line of the input, or that it was longer than any may be and was passed over. */
export type Line = string | { readonly tooLong: true }

const TOO_LONG: Line = { tooLong: true }
const END = /\r\n|\n|\r/u

/**
 * Lines as they come in, those of a chunk together: a row is answered before the next one is there,
 * and a million cost no million of promises. No more than one line is ever held.
 */
export async function* lineBlocks(
  chunks: AsyncIterable<string>,
  longest = LONGEST_LINE,
): AsyncIterable<readonly Line[]> {
  let rest = ''
  let passing = false
  for await (const chunk of chunks) {
    let text = rest + chunk
    // It may be the first half of a line end.
    const half = text.endsWith('\r') ? '\r' : ''
    if (half !== '') text = text.slice(0, -1)
    const parts = text.split(END)
    const last = parts.pop() ?? ''
    const lines = parts.map((part): Line => (part.length > longest ? TOO_LONG : part))
    // The line that is passed over was told when it grew too long; here it ends.
    if (passing && parts.length > 0) {
      lines.shift()
      passing = false
    }
    if (!passing && last.length > longest) {
      lines.push(TOO_LONG)
      passing = true
    }
    rest = (passing ? '' : last) + half
    if (lines.length > 0) yield lines
  }
  const last = rest.replace(/\r$/u, '')
  if (!passing && last !== '') yield [last]
}
