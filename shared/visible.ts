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
