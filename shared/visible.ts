/**
 * Letters that do something instead of being seen: control characters of terminals (C0, DEL, C1), and
 * those that turn the direction of a text, by which it can be made to read as another.
 */
const UNSEEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/u
const EACH = new RegExp(UNSEEN.source, 'gu')

const escaped = (letter: string) =>
  `\\u${(letter.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`

/** A text as it can be printed anywhere: what would act is written out, as JSON writes it. Tabs and line ends stay. */
export const visible = (text: string): string =>
  UNSEEN.test(text) ? text.replace(EACH, escaped) : text

/** The same for every text in plain data. */
export function visibleAll<T>(tree: T): T {
  return visibleIn(tree) as T
}

function visibleIn(tree: unknown): unknown {
  if (typeof tree === 'string') return visible(tree)
  if (Array.isArray(tree)) return tree.map(visibleIn)
  if (typeof tree !== 'object' || tree === null) return tree
  return Object.fromEntries(
    Object.entries(tree).map(([name, value]) => [visible(name), visibleIn(value)]),
  )
}

/**
 * JSON in one line that can be printed anywhere, and reads back as the same value.
 *
 * @param hides - Whether the input hides anything, see {@link hidesLetters}: of itself no answer does,
 *   and looking through each would cost as much as writing it.
 */
export const jsonText = (value: unknown, hides = true): string =>
  printable(JSON.stringify(value), hides)

/** The same of JSON that is text already. */
export const printable = (json: string, hides: boolean): string => (hides ? visible(json) : json)

/** Whether a text has unseen letters in it, or may have by an escape of JSON. */
export const hidesLetters = (text: string): boolean => text.includes('\\u') || UNSEEN.test(text)
