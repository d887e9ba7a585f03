import { keptBy, keptWith } from '../kept.ts'
import { decimalText } from '../quantity/decimal-text.ts'
import {
  type Presentation,
  Quantity,
  Showable,
  type ShownQuantity,
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
  const text = (part: unknown): string => {
    if (typeof part === 'string') return stringText(part)
    if (part instanceof Quantity) return figureJson(part, presentation)
    if (Array.isArray(part)) return `[${itemsText(part, text)}]`
    if (typeof part === 'object' && part !== null && !(part instanceof Showable)) {
      return `{${membersOf(part, text)}}`
    }
    return otherText(part, presentation)
  }
  return membersOf(tree, text)
}

/** A figure as JSON, made once however often it stands in an answer. */
export const figureJson = (figure: Quantity, presentation: Presentation): string =>
  figure.once(presentation, madeJson)

const madeJson = (figure: Quantity, presentation: Presentation): string =>
  quantityText(show(figure, presentation))

/** What is neither a text, a figure, a list nor an object of its own: rare, and nothing to gain by. */
export const otherText = (part: unknown, presentation: Presentation): string =>
  typeof part === 'boolean' ? String(part) : (JSON.stringify(showAll(part, presentation)) ?? 'null')

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
  const { value, unit, plusMinus, also } = shown
  const figure = `{"value":${decimalText(value)}`
  if (also === undefined) return figure + closing(unit)(plusMinus)
  const second = decimalText(also.value)
  const end = closingBoth(also.unit)(also.plusMinus)
  // Joined, so that it is one piece in memory: it stands in several places of an answer.
  return [figure, opening(unit)(plusMinus), second, end].join('')
}

/** Names are those of schemas and of formulas, which are few. */
const MOST_NAMES = 5_000
export const nameText = keptBy((name: string) => `${JSON.stringify(name)}:`, MOST_NAMES)
/** A ± has one or two figures: there are few of them. */
const MOST_WIDTHS = 200

/** What stands behind a value: its unit, its ± and what follows, in one piece. */
const behind = (follows: string) =>
  keptBy(
    (unit: string) =>
      keptBy((plusMinus: number | undefined) => {
        const width = plusMinus === undefined ? '' : `,"plusMinus":${decimalText(plusMinus)}`
        // Joined, so that it is one piece in memory too: a sum of texts is taken apart each time it is written.
        return [',"unit":', JSON.stringify(unit), width, follows].join('')
      }, MOST_WIDTHS),
    MOST_NAMES,
  )
const closing = behind('}')
const opening = behind(',"also":{"value":')
const closingBoth = behind('}}')

/** Letters that JSON writes in another way: its own signs, control characters, halves of a pair. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const ESCAPED = /["\\\u0000-\u001f\ud800-\udfff]/
export const stringText = (text: string): string =>
  ESCAPED.test(text) ? JSON.stringify(text) : `"${text}"`

/** A list of what is the same in many answers: sources, cautions. */
export const constantTexts = (list: readonly object[]): string =>
  `[${list.map(constantText).join(',')}]`

const constantText = keptWith((constant: object): string => JSON.stringify(constant))
