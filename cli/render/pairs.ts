import { isQuantity, type Scalar, scalarText, valueText } from '../../shared/answer/scalar.ts'
import type { Ink } from './ink.ts'
import { hanging, padStart, widest } from './wrap.ts'

export interface Pair {
  readonly label: string
  readonly value: Scalar
}

export interface Page {
  readonly ink: Ink
  readonly width: number
  readonly precise: boolean
}

const GAP = 2
/** Labels longer than this share of the line wrap instead of pushing the figures away. */
const LABEL_SHARE = 0.45

/** Labels on the left, figures lined up on their decimal points, the other unit system beside them. */
export function pairLines(pairs: readonly Pair[], indent: number, page: Page): readonly string[] {
  const longest = Math.floor(page.width * LABEL_SHARE)
  const labels = Math.min(widest(pairs.map(({ label }) => label)), longest)
  const start = indent + labels + GAP
  const whole = widest(pairs.map(({ value }) => split(value).whole))
  const cells = pairs.map(({ value }) => cellText(value, whole, page.precise))
  const quantities = cells.filter((_, index) => isQuantity(pairs[index]?.value))
  const column = widest(quantities) + GAP
  const others = pairs.flatMap(({ value }) => alsoOf(value))
  const alsoWhole = widest(others.map((text) => text.split(/[.\s]/u)[0] ?? ''))
  return pairs.flatMap(({ label, value }, index) => {
    const cell = cells[index] ?? ''
    const [also] = alsoOf(value)
    const beside =
      also === undefined
        ? ''
        : ' '.repeat(Math.max(column - widest([cell]), GAP)) +
          page.ink.quiet(lineUp(also, alsoWhole))
    const figure = isQuantity(value) ? page.ink.figure(cell) : cell
    const fits = widest([cell + beside]) + start <= page.width
    const text = fits ? figure + beside : isQuantity(value) && also ? `${figure} (${also})` : figure
    return hanging(' '.repeat(indent) + label, text, start, page.width)
  })
}

const split = (value: Scalar) => {
  const text =
    typeof value === 'string' || typeof value === 'boolean' ? '' : scalarText(value, true)
  return { whole: text.split(/[.\s]/u)[0] ?? '' }
}

function cellText(value: Scalar, whole: number, precise: boolean): string {
  if (isQuantity(value)) return lineUp(valueText(value), whole)
  const text = scalarText(value, precise)
  return typeof value === 'number' ? lineUp(text, whole) : text
}

const alsoOf = (value: Scalar): readonly string[] =>
  isQuantity(value) && value.also ? [valueText(value.also)] : []

/** Moves a figure right until its whole part ends at `columns`. */
function lineUp(text: string, columns: number): string {
  const whole = text.split(/[.\s]/u)[0] ?? ''
  return padStart(whole, columns) + text.slice(whole.length)
}
