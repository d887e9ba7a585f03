import { CalcError } from '../errors.ts'
import { Quantity, requireUnit } from './quantity.ts'
import { CHOICES } from './shown-units.ts'
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
  const { kind, si, shownIn } = quantity
  const choices = CHOICES[kind]
  if (shownIn !== undefined) {
    const unit = requireUnit(kind, shownIn)
    const chosen = [choices.us(si), choices.si(si)].find(([symbol]) => symbol === unit.symbol)
    return render(quantity, unit, chosen?.[1] ?? figuresFor(si, unit), precise, onScreen)
  }
  const inSystem = (system: 'us' | 'si') => {
    const [symbol, decimals] = choices[system](sizeOf(quantity))
    return render(quantity, requireUnit(kind, symbol), decimals, precise, onScreen)
  }
  if (units !== 'both') return inSystem(units)
  const shown = inSystem(lead)
  const also = inSystem(lead === 'us' ? 'si' : 'us')
  return also.unit === shown.unit ? shown : { ...shown, also }
}

/** What the unit is chosen by: 20 micron ±1 psi is a matter of psi. A gauge pressure's sign matters more. */
function sizeOf({ kind, si, plusMinus, sizedAs }: Quantity): number {
  if (sizedAs !== undefined) return sizedAs
  return kind === 'gaugePressure' ? si : Math.max(Math.abs(si), plusMinus ?? 0)
}

/** Five significant figures: a unit that somebody asked for by name gets enough to convert back. */
function figuresFor(si: number, unit: Unit): number {
  const magnitude = Math.abs((si - unit.offset) / unit.factor)
  return magnitude === 0 ? 2 : Math.min(Math.max(4 - Math.floor(Math.log10(magnitude)), 0), 12)
}

function render(
  quantity: Quantity,
  unit: Unit,
  decimals: number,
  precise: boolean,
  onScreen: boolean,
): ShownValue {
  const value = (quantity.si - unit.offset) / unit.factor
  const plusMinus =
    quantity.plusMinus === undefined ? undefined : quantity.plusMinus / Math.abs(unit.factor)
  if (precise)
    return frame(tidy(value), unit, plusMinus === undefined ? undefined : tidy(plusMinus))
  const supported = plusMinus === undefined ? decimals : decimalsFor(plusMinus, decimals)
  const size = Math.max(Math.abs(value), plusMinus ?? 0)
  const supports = unit.offset !== 0 || (onScreen && plusMinus !== undefined)
  const places = supports ? supported : Math.max(supported, threeFigures(size, decimals))
  return frame(
    roundTo(value, places),
    unit,
    plusMinus === undefined ? undefined : roundUp(plusMinus, places),
  )
}

/** A finite SI value can still pass the largest number when it is turned into a small unit. */
const frame = (value: number, unit: Unit, plusMinus: number | undefined): ShownValue =>
  plusMinus === undefined
    ? { value: finite(value), unit: unit.symbol }
    : { value: finite(value), unit: unit.symbol, plusMinus: finite(plusMinus) }

/** Nothing that is shown stands for "no number". @throws {CalcError} `out-of-range` */
function finite(value: number): number {
  if (Number.isFinite(value)) return value
  throw new CalcError('out-of-range', 'A figure of the answer is too large to be a number.', {
    hint: 'Check the input for a value far outside what the trade meets.',
  })
}

/** One digit of the uncertainty, two when it begins with 1 or 2 (GUM 7.2.6 asks for two at most). */
function decimalsFor(plusMinus: number, fallback: number): number {
  if (plusMinus === 0) return fallback
  const exponent = Math.floor(Math.log10(plusMinus))
  const leading = plusMinus / tenTo(exponent)
  return Math.min(Math.max(leading < 3 ? 1 - exponent : -exponent, 0), 15)
}

const MOST_DECIMALS = 15
const POWERS = Array.from({ length: MOST_DECIMALS + 1 }, (_, decimals) => 10 ** decimals)
const STEPS = POWERS.map((_, decimals) => 10 ** -decimals)
/** A power of ten; those that figures are rounded with are at hand. */
const tenTo = (exponent: number): number =>
  (exponent < 0 ? STEPS[-exponent] : POWERS[exponent]) ?? 10 ** exponent

/** Up to here a figure times its power of ten is off by less than {@link NEAR_TIE}. */
const SURE_BELOW = 1e9
const NEAR_TIE = 1e-6

/** As `toFixed` rounds, which is asked only where a figure is long or lies between two others. */
function roundTo(value: number, decimals: number): number {
  const power = tenTo(decimals)
  const scaled = value * power
  const nearest = Math.round(scaled)
  const isSure =
    Math.abs(scaled) < SURE_BELOW && Math.abs(Math.abs(scaled - nearest) - 0.5) > NEAR_TIE
  const rounded = isSure ? nearest / power : Number(value.toFixed(decimals))
  return rounded === 0 ? 0 : rounded
}

/** An uncertainty is never rounded to less than half of itself, nor to nothing. */
const roundUp = (value: number, decimals: number) => {
  const step = tenTo(-decimals)
  return roundTo(Math.max(Math.ceil(value / step - 0.05) * step, value === 0 ? 0 : step), decimals)
}

/** Decimals beyond the usual ones that a small figure may take. */
const MOST_MORE = 3

/**
 * Decimals that keep three significant figures, so that rounding moves no limit by more than half a
 * percent; of a figure far below the usual decimals only as many as anybody can use.
 */
const threeFigures = (size: number, decimals: number) =>
  size === 0 ? 0 : Math.min(Math.max(2 - Math.floor(Math.log10(size)), 0), decimals + MOST_MORE, 15)

/** Cuts the last digits, which conversion factors leave as noise. */
const tidy = (value: number) => Number(value.toPrecision(14))

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
  if (tree instanceof Quantity) return show(tree, presentation)
  if (tree instanceof Showable) return tree.shown(presentation)
  if (Array.isArray(tree)) return tree.map((item) => showAny(item, presentation))
  if (typeof tree === 'number') return finite(tree)
  if (tree === null || typeof tree !== 'object') return tree
  const shown: Record<string, unknown> = {}
  for (const key of Object.keys(tree)) {
    const value = (tree as Readonly<Record<string, unknown>>)[key]
    if (value !== undefined) shown[key] = showAny(value, presentation)
  }
  return shown
}
