import { CalcError } from '../errors.ts'
import { decadeOf } from './decade.ts'
import { Quantity, requireUnit } from './quantity.ts'
import { decimalsFor, roundTo, roundUp, threeFigures, tidy } from './rounding.ts'
import { CHOICES, type Choice } from './shown-units.ts'
import type { Unit } from './units.ts'

export const UNIT_SYSTEMS = ['us', 'si', 'both'] as const
export type UnitSystem = (typeof UNIT_SYSTEMS)[number]

export interface ShownValue {
  readonly value: number
  readonly unit: string
  /** Expanded uncertainty, coverage factor 2, same unit. */
  readonly plusMinus?: number | undefined
}

export interface ShownQuantity extends ShownValue {
  /** The same in the other unit system, when both are asked for. */
  readonly also?: ShownValue | undefined
}

export interface Presentation {
  readonly units: UnitSystem
  /** Which system comes first where both are shown; the US one where nothing says. */
  readonly lead?: 'us' | 'si'
  /** Only the digits that the ± supports, as on a screen; a result keeps three figures all the same. */
  readonly onScreen?: boolean
  /** Full precision instead of rounding to what the uncertainty supports. */
  readonly precise: boolean
}

/** A quantity as people read it, in the asked unit system. */
export function show(
  quantity: Quantity,
  { units, precise, lead = 'us', onScreen = false }: Presentation,
): ShownQuantity {
  if (quantity.shownIn !== undefined) {
    const choice = askedFor(quantity, quantity.shownIn)
    return render(quantity, choice, precise, onScreen)
  }
  const { us, si } = CHOICES[quantity.kind]
  const size = sizeOf(quantity)
  const inSystem = units === 'both' ? lead : units
  const shown = render(quantity, (inSystem === 'us' ? us : si)(size), precise, onScreen)
  if (units !== 'both') return shown
  const also = render(quantity, (lead === 'us' ? si : us)(size), precise, onScreen)
  return also.unit === shown.unit ? shown : withBoth(shown, also)
}

/** Written out: a copy by spreading would cost more than the rounding. */
const withBoth = ({ value, unit, plusMinus }: ShownValue, also: ShownValue): ShownQuantity =>
  plusMinus === undefined ? { value, unit, also } : { value, unit, plusMinus, also }

/** The unit that a quantity asks for, with the decimals that it has where it is the usual one. */
function askedFor({ kind, si }: Quantity, shownIn: string): Choice {
  const unit = requireUnit(kind, shownIn)
  const choices = CHOICES[kind]
  const usual = [choices.us(si), choices.si(si)].find((choice) => choice.unit === unit)
  return usual ?? { unit, decimals: figuresFor(si, unit) }
}

/** What the unit is chosen by: 20 micron ±1 psi is a matter of psi. A gauge pressure's sign matters more. */
function sizeOf({ kind, si, plusMinus, sizedAs }: Quantity): number {
  if (sizedAs !== undefined) return sizedAs
  return kind === 'gaugePressure' ? si : Math.max(Math.abs(si), plusMinus ?? 0)
}

/** Five significant figures: a unit that somebody asked for by name gets enough to convert back. */
function figuresFor(si: number, unit: Unit): number {
  const magnitude = Math.abs((si - unit.offset) / unit.factor)
  return magnitude === 0 ? 2 : Math.min(Math.max(4 - decadeOf(magnitude), 0), 12)
}

function render(
  { si, plusMinus: width }: Quantity,
  { unit, decimals }: Choice,
  precise: boolean,
  onScreen: boolean,
): ShownValue {
  const { symbol, factor, offset } = unit
  const value = (si - offset) / factor
  if (width === undefined) {
    if (precise) return { value: finite(tidy(value)), unit: symbol }
    const places =
      offset === 0 ? Math.max(decimals, threeFigures(Math.abs(value), decimals)) : decimals
    return { value: finite(roundTo(value, places)), unit: symbol }
  }
  const plusMinus = width / Math.abs(factor)
  if (precise) {
    return { value: finite(tidy(value)), unit: symbol, plusMinus: finite(tidy(plusMinus)) }
  }
  const supported = decimalsFor(plusMinus, decimals)
  const size = Math.max(Math.abs(value), plusMinus)
  const supports = offset !== 0 || onScreen
  const places = supports ? supported : Math.max(supported, threeFigures(size, decimals))
  return {
    value: finite(roundTo(value, places)),
    unit: symbol,
    plusMinus: finite(roundUp(plusMinus, places)),
  }
}

/**
 * Nothing that is shown stands for "no number": a finite SI value can still pass the largest one when
 * it is turned into a small unit.
 *
 * @throws {CalcError} `out-of-range`
 */
function finite(value: number): number {
  if (Number.isFinite(value)) return value
  throw new CalcError('out-of-range', 'A figure of the answer is too large to be a number.', {
    hint: 'Check the input for a value far outside what the trade meets.',
  })
}

/** Something in a computed tree that is shown in its own way, once units are chosen. */
export abstract class Showable {
  abstract shown(presentation: Presentation): string
}

/** What becomes of a computed tree when every quantity in it is shown. */
export type Shown<T> = T extends Quantity
  ? ShownQuantity
  : T extends Showable
    ? string
    : T extends readonly (infer E)[]
      ? readonly Shown<E>[]
      : T extends object
        ? { [P in keyof T]: Shown<T[P]> }
        : T

/** Replaces every {@link Quantity} in plain data by its shown form, and leaves out what is undefined. */
export function showAll<T>(tree: T, presentation: Presentation): Shown<T> {
  return showAny(tree, presentation) as Shown<T>
}

function showAny(tree: unknown, presentation: Presentation): unknown {
  if (typeof tree === 'string') return tree
  if (tree instanceof Quantity) return tree.once(presentation, show)
  if (tree instanceof Showable) return tree.shown(presentation)
  if (Array.isArray(tree)) return tree.map((item) => showAny(item, presentation))
  if (typeof tree === 'number') return finite(tree)
  if (tree === null || typeof tree !== 'object') return tree
  const shown: Record<string, unknown> = {}
  // Plain data inherits nothing that would be gone through, and this makes no list of names.
  for (const key in tree) {
    const value = (tree as Readonly<Record<string, unknown>>)[key]
    if (value !== undefined) shown[key] = showAny(value, presentation)
  }
  return shown
}
