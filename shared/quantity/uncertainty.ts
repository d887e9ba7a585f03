import { CalcError } from '../errors.ts'

/** A figure with its expanded uncertainty (coverage factor 2), both in one unit. */
export interface Uncertain {
  readonly si: number
  readonly plusMinus?: number | undefined
}

/** Something that a figure rests on, with the words for it: a reading, the barometer, a bore, the refrigerant's data. */
export interface Ingredient extends Uncertain {
  readonly name: string
}

/** How much of a figure's uncertainty one ingredient brings. */
export interface Contribution {
  readonly name: string
  readonly plusMinus: number
}

/** A figure, its expanded uncertainty, and what each ingredient brings to it, the largest first. */
export interface Budget extends Uncertain {
  readonly parts: readonly Contribution[]
}

/**
 * First-order propagation of independent uncertainties through `f`.
 *
 * Each input is moved by its own half-width and the halves of the resulting spans are added in
 * quadrature: the numerical form of GUM (JCGM 100:2008) 5.1.2 given in its note 2 to 5.1.3.
 * Expanded uncertainties of one coverage factor go in and come out alike.
 * Where `f` refuses one side (the edge of its range), the other side's difference stands for both.
 *
 * Two figures that share an ingredient (one barometer under two gauges) are not independent: give
 * the ingredient itself, never figures that were made from it.
 *
 * @param f - Pure function of as many numbers as there are inputs.
 * @returns `f` at the values; `plusMinus` undefined when no input carries one.
 * @throws {CalcError} `out-of-range` when `f` refuses both sides of an input.
 */
export function propagate(
  inputs: readonly Uncertain[],
  f: (...values: number[]) => number,
): { readonly si: number; readonly plusMinus: number | undefined } {
  const values = inputs.map(siOf)
  const si = f(...values)
  const moved = one(f, values)
  const spans: number[] = []
  inputs.forEach((input, index) => {
    const span = spanOf(input, index, si, moved)
    if (span !== undefined) spans.push(span)
  })
  return { si, plusMinus: together(spans) }
}

/** As {@link propagate}, with the share of each ingredient. */
export function budget(
  ingredients: readonly Ingredient[],
  f: (...values: number[]) => number,
): Budget {
  const values = ingredients.map(siOf)
  return budgetAround(ingredients, f(...values), one(f, values))
}

const siOf = ({ si }: Uncertain) => si

/**
 * The same of a figure that is known already, by what it becomes where one ingredient alone has
 * another value: with hundreds of ingredients, handing all of them over each time would be most of the work.
 */
export function budgetAround(
  ingredients: readonly Ingredient[],
  si: number,
  moved: (index: number, value: number) => number,
): Budget {
  const parts: Contribution[] = []
  for (let index = 0; index < ingredients.length; index += 1) {
    const ingredient = ingredients[index] as Ingredient
    const span = spanOf(ingredient, index, si, moved)
    if (span !== undefined)
      putIn(parts, { name: ingredient.name, plusMinus: Math.abs(span) }, sizeOf)
  }
  return { si, plusMinus: together(parts.map(sizeOf)), parts }
}

/** The half-width alone of such a figure, where nobody asks for the shares. */
export function widthAround(
  inputs: readonly Uncertain[],
  si: number,
  moved: (index: number, value: number) => number,
): number | undefined {
  const spans: number[] = []
  for (let index = 0; index < inputs.length; index += 1) {
    const span = spanOf(inputs[index] as Uncertain, index, si, moved)
    if (span !== undefined) putIn(spans, Math.abs(span), itself)
  }
  return together(spans)
}

/** Into a list that has the largest first: of few, which is what a figure rests on, faster than to sort it. */
function putIn<T>(list: T[], entry: T, size: (entry: T) => number): void {
  let at = list.length
  for (; at > 0 && size(list[at - 1] as T) < size(entry); at -= 1) list[at] = list[at - 1] as T
  list[at] = entry
}

const sizeOf = ({ plusMinus }: Contribution) => plusMinus
const itself = (span: number) => span

/** Independent spans in quadrature; to spread the usual few costs more than the sum. */
function together(spans: readonly number[]): number | undefined {
  const [a = 0, b = 0, c = 0, d = 0] = spans
  switch (spans.length) {
    case 0:
      return undefined
    case 3:
      return Math.hypot(a, b, c)
    case 4:
      return Math.hypot(a, b, c, d)
    default:
      return spans.length < 3 ? Math.hypot(a, b) : Math.hypot(...spans)
  }
}

/** `f` with one of its values replaced; up to four, as most figures have, are handed over as they are. */
function one(f: (...values: number[]) => number, values: readonly number[]) {
  const [a, b, c, d] = values as readonly [number, number, number, number]
  switch (values.length) {
    case 2:
      return (index: number, value: number) => (index === 0 ? f(value, b) : f(a, value))
    case 3:
      return (index: number, value: number) =>
        index === 0 ? f(value, b, c) : index === 1 ? f(a, value, c) : f(a, b, value)
    case 4:
      return (index: number, value: number) =>
        f(
          index === 0 ? value : a,
          index === 1 ? value : b,
          index === 2 ? value : c,
          index === 3 ? value : d,
        )
    default:
      return oneOfMany(f, values)
  }
}

/** One copy for all: the value that was moved last is put back first. */
function oneOfMany(f: (...values: number[]) => number, values: readonly number[]) {
  const moved = values.slice()
  let last = 0
  return (index: number, value: number): number => {
    moved[last] = values[last] as number
    moved[index] = value
    last = index
    return f(...moved)
  }
}

/** The half of the span that an input makes; undefined where it carries no uncertainty. */
function spanOf(
  { si: value, plusMinus: width }: Uncertain,
  index: number,
  si: number,
  moved: (index: number, value: number) => number,
): number | undefined {
  if (width === undefined) return undefined
  if (width === 0) return 0
  const above = tryAt(moved, index, value + width)
  const below = tryAt(moved, index, value - width)
  if (above !== undefined && below !== undefined) return (above - below) / 2
  if (above === undefined && below === undefined) throw beyondReach()
  return (above ?? si) - (below ?? si)
}

function tryAt(
  moved: (index: number, value: number) => number,
  index: number,
  value: number,
): number | undefined {
  try {
    return moved(index, value)
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}

/** Counting such an input as exact would hide the worst reading of all. */
const beyondReach = () =>
  new CalcError(
    'out-of-range',
    'The ± of a reading reaches outside what can be computed, above and below.',
    { hint: 'Read again with a better instrument, or give a smaller ±.' },
  )

/**
 * Half-width of an instrument whose error stays inside ±`limit`: expanded uncertainty of a
 * rectangular distribution, 2 · limit / √3 (GUM 4.3.7), same unit as `limit`.
 */
export const fromLimits = (limit: number) => (2 * Math.abs(limit)) / Math.sqrt(3)

/** Half-width of a figure; zero where nothing brought one. */
export const widthOf = (entry: Uncertain) => entry.plusMinus ?? 0

/** The figure lies below `limit` with its whole interval. */
export const surelyBelow = (entry: Uncertain, limit: number) => entry.si + widthOf(entry) < limit

/** The figure lies above `limit` with its whole interval. */
export const surelyAbove = (entry: Uncertain, limit: number) => entry.si - widthOf(entry) > limit

export type Comparison = 'below' | 'inside' | 'above' | 'cannot-tell'

/**
 * Where a figure stands against a band, when its own uncertainty may cross an edge.
 * `cannot-tell` when the interval of the figure reaches over an edge of the band.
 */
export function compareWithBand(figure: Uncertain, low: number, high: number): Comparison {
  if (surelyBelow(figure, low)) return 'below'
  if (surelyAbove(figure, high)) return 'above'
  const width = widthOf(figure)
  if (figure.si - width >= low && figure.si + width <= high) return 'inside'
  return 'cannot-tell'
}

/** What it takes to bring a figure clear of a limit: the ingredient to know better, and how much better. */
export interface Settling {
  readonly largest: Contribution
  /** How many times as good it must be; undefined where one ingredient alone will not do. */
  readonly timesAsGood: number | undefined
  /** What the others bring together. */
  readonly othersPlusMinus: number
}

/**
 * @param parts - Largest first, as in a {@link Budget}.
 * @param margin - Distance of the figure from the limit, same unit.
 * @returns undefined where nothing brings an uncertainty.
 */
export function settling(parts: readonly Contribution[], margin: number): Settling | undefined {
  const [largest, ...others] = parts
  if (!largest) return undefined
  const rest = Math.hypot(...others.map((part) => part.plusMinus))
  const needed = rest < margin ? Math.sqrt(margin ** 2 - rest ** 2) : undefined
  return {
    largest,
    timesAsGood: needed === undefined ? undefined : largest.plusMinus / needed,
    othersPlusMinus: rest,
  }
}
