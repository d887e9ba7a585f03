import { CalcError } from '../errors.ts'

/** A figure with its expanded uncertainty (coverage factor 2), both in one unit. */
export interface Uncertain {
  readonly si: number
  readonly plusMinus?: number | undefined
}

/**
 * First-order propagation of independent uncertainties through `f`.
 *
 * Each input is moved by its own half-width and the halves of the resulting spans are added in
 * quadrature: the numerical form of GUM (JCGM 100:2008) 5.1.2 given in its note 2 to 5.1.3.
 * Expanded uncertainties of one coverage factor go in and come out alike.
 * Where `f` refuses one side (the edge of its range), the other side's difference stands for both.
 *
 * @param f - Pure function of as many numbers as there are inputs.
 * @returns `f` at the values; `plusMinus` undefined when no input carries one.
 * @throws {CalcError} `out-of-range` when `f` refuses both sides of an input.
 */
export function propagate(
  inputs: readonly Uncertain[],
  f: (...values: number[]) => number,
): { readonly si: number; readonly plusMinus: number | undefined } {
  const values = inputs.map((input) => input.si)
  const si = f(...values)
  const spans = inputs.flatMap((input, index) => {
    const width = input.plusMinus
    if (width === undefined) return []
    if (width === 0) return [0]
    const above = tryAt(f, values, index, width)
    const below = tryAt(f, values, index, -width)
    if (above !== undefined && below !== undefined) return [(above - below) / 2]
    if (above === undefined && below === undefined) throw beyondReach()
    return [(above ?? si) - (below ?? si)]
  })
  return { si, plusMinus: spans.length === 0 ? undefined : Math.hypot(...spans) }
}

function tryAt(
  f: (...values: number[]) => number,
  values: readonly number[],
  index: number,
  shift: number,
): number | undefined {
  try {
    return f(...values.map((value, position) => (position === index ? value + shift : value)))
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

export type Comparison = 'below' | 'inside' | 'above' | 'cannot-tell'

/**
 * Where a figure stands against a band, when its own uncertainty may cross an edge.
 * `cannot-tell` when the interval of the figure reaches over an edge of the band.
 */
export function compareWithBand(figure: Uncertain, low: number, high: number): Comparison {
  const width = figure.plusMinus ?? 0
  const [from, to] = [figure.si - width, figure.si + width]
  if (to < low) return 'below'
  if (from > high) return 'above'
  if (from >= low && to <= high) return 'inside'
  return 'cannot-tell'
}
