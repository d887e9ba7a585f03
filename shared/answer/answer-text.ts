import { keptBy, keptWith } from '../kept.ts'
import { decimalText } from '../quantity/decimal-text.ts'
import {
  type Presentation,
  Quantity,
  Showable,
  type ShownQuantity,
  type ShownValue,
  show,
  showAll,
} from '../quantity/index.ts'

/**
 * The members of a computed tree as JSON, byte for byte what `JSON.stringify(showAll(tree))` gives
 * between its braces.
 *
 * Half of an answer are figures, each of which stands in several places and has four numbers with a
 * few decimals: written here they cost a third of what making objects of them and writing those does.
 */
export function membersText(tree: object, presentation: Presentation): string {
  const figureText = (quantity: Quantity) => quantityText(show(quantity, presentation))
  const text = (part: unknown): string => {
    if (typeof part === 'string') return stringText(part)
    if (part instanceof Quantity) return part.once(presentation, figureText)
    if (Array.isArray(part)) return `[${itemsText(part, text)}]`
    if (typeof part === 'object' && part !== null && !(part instanceof Showable)) {
      return `{${membersOf(part, text)}}`
    }
    // Rare, and nothing to gain by.
    return JSON.stringify(showAll(part, presentation)) ?? 'null'
  }
  return membersOf(tree, text)
}

function itemsText(list: readonly unknown[], text: (part: unknown) => string): string {
  let inside = ''
  for (const part of list) inside += inside === '' ? text(part) : `,${text(part)}`
  return inside
}

function membersOf(tree: object, text: (part: unknown) => string): string {
  let inside = ''
  for (const name of Object.keys(tree)) {
    const part = (tree as Readonly<Record<string, unknown>>)[name]
    if (part === undefined) continue
    inside += inside === '' ? nameText(name) : `,${nameText(name)}`
    inside += text(part)
  }
  return inside
}

function quantityText(shown: ShownQuantity): string {
  const { also } = shown
  return also === undefined
    ? `{${valueText(shown)}}`
    : `{${valueText(shown)},"also":{${valueText(also)}}}`
}

const valueText = ({ value, unit, plusMinus }: ShownValue): string =>
  plusMinus === undefined
    ? `"value":${decimalText(value)},"unit":${unitText(unit)}`
    : `"value":${decimalText(value)},"unit":${unitText(unit)},"plusMinus":${decimalText(plusMinus)}`

/** Names are those of schemas and of formulas, which are few. */
const MOST_NAMES = 5_000
const nameText = keptBy((name: string) => `${JSON.stringify(name)}:`, MOST_NAMES)
const unitText = keptBy((unit: string) => JSON.stringify(unit), MOST_NAMES)

/** Letters that JSON writes in another way: its own signs, control characters, halves of a pair. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const ESCAPED = /["\\\u0000-\u001f\ud800-\udfff]/
const stringText = (text: string): string =>
  ESCAPED.test(text) ? JSON.stringify(text) : `"${text}"`

/** A list of what is the same in many answers: sources, cautions. */
export const constantTexts = (list: readonly object[]): string =>
  `[${list.map(constantText).join(',')}]`

const constantText = keptWith((constant: object): string => JSON.stringify(constant))
