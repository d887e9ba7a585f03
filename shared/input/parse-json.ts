import { CalcError } from '../errors.ts'

/**
 * JSON from a text.
 *
 * @throws {CalcError} `bad-input` that says where it stops making sense, or which name an object has
 *   twice: of two answers to one question the last would win unseen.
 */
export function parseJson(text: string): unknown {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch (error) {
    const reason = error instanceof SyntaxError ? error.message : 'it cannot be read'
    throw new CalcError('bad-input', `This is not valid JSON: ${reason.slice(0, 160)}.`, {
      hint: 'Names and texts stand in double quotes, and nothing follows the last item.',
    })
  }
  // As many names as the text has: none is there twice.
  const twice = namesIn(value) === colonsIn(text) ? undefined : repeatedName(text)
  if (twice === undefined) return value
  throw new CalcError('bad-input', `"${twice.slice(0, 60)}" is given twice in one object.`, {
    path: [twice.slice(0, 60)],
    hint: 'Give it once.',
  })
}

const [QUOTE, BACKSLASH, COLON, SPACE] = [0x22, 0x5c, 0x3a, 0x20]
const [LIST, LIST_END, OBJECT, OBJECT_END] = [0x5b, 0x5d, 0x7b, 0x7d]

/** How many names the objects of a valid JSON text have, repeated ones too: each has a colon behind it. */
function colonsIn(text: string): number {
  let colons = 0
  let inString = false
  for (let index = 0; index < text.length; index += 1) {
    const letter = text.charCodeAt(index)
    if (letter === QUOTE) inString = !inString
    else if (inString) index += letter === BACKSLASH ? 1 : 0
    else if (letter === COLON) colons += 1
  }
  return colons
}

/** How many names a flat object has, as most inputs are; no number for any other value. */
function namesIn(value: unknown): number {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return Number.NaN
  let names = 0
  for (const name in value) {
    const part = (value as Readonly<Record<string, unknown>>)[name]
    if (typeof part === 'object' && part !== null) return Number.NaN
    names += 1
  }
  return names
}

/** The first name that an object of a valid JSON text has twice. Letter by letter: bodies may be long and hostile. */
function repeatedName(text: string): string | undefined {
  // Of each open object the names so far, nothing for a list.
  const open: (Set<string> | undefined)[] = []
  for (let index = 0; index < text.length; index += 1) {
    const letter = text.charCodeAt(index)
    if (letter === OBJECT) open.push(new Set())
    else if (letter === LIST) open.push(undefined)
    else if (letter === OBJECT_END || letter === LIST_END) open.pop()
    else if (letter === QUOTE) {
      const end = endOfString(text, index)
      if (isName(text, end)) {
        const name = nameOf(text.slice(index, end + 1))
        const names = open.at(-1)
        if (names?.has(name)) return name
        names?.add(name)
      }
      index = end
    }
  }
  return undefined
}

/** Where the string that begins at `start` has its closing quotation mark. */
function endOfString(text: string, start: number): number {
  for (let index = start + 1; index < text.length; index += 1) {
    const letter = text.charCodeAt(index)
    if (letter === QUOTE) return index
    if (letter === BACKSLASH) index += 1
  }
  return text.length
}

function isName(text: string, end: number): boolean {
  let index = end + 1
  // Of what JSON has for blanks, the space is the last.
  while (text.charCodeAt(index) <= SPACE) index += 1
  return text.charCodeAt(index) === COLON
}

const nameOf = (quoted: string) =>
  quoted.includes('\\') ? String(JSON.parse(quoted)) : quoted.slice(1, -1)
