import { decimalText } from '../quantity/decimal-text.ts'
import {
  type Presentation,
  Quantity,
  quantity,
  requireUnit,
  type ShownValue,
  show,
} from '../quantity/index.ts'

/** What is needed of a figure to write it. */
interface Written {
  readonly value: Quantity | number | string
  readonly step?: number | undefined
  readonly safe?: 'up' | 'down' | undefined
}

/** How a sentence may ask for a figure. */
export type FigureForm = 'both' | 'bare' | 'spoken'

export const isForm = (word: string): word is FigureForm =>
  word === 'both' || word === 'bare' || word === 'spoken'

/**
 * A figure as the screen shows it, in the system that leads: with its ±, no finer than the gauge or
 * scale shows it, limits rounded to the safe side, pounds with ounces.
 *
 * @param form - `both`: with the other unit system in parentheses, where the answer has both; `bare`: without its ±; `spoken`:
 *   both systems, without its ±.
 */
export function figureText(
  { value, step, safe }: Written,
  { units, precise, lead = 'us' }: Presentation,
  form?: FigureForm,
): string {
  if (!(value instanceof Quantity)) return String(value)
  const bare = form === 'bare' || form === 'spoken'
  const system = units === 'both' ? lead : units
  const first = textIn(value, system, step, safe, precise, bare)
  const alone = units !== 'both' || value.shownIn !== undefined
  if ((form !== 'both' && form !== 'spoken') || alone) return first
  const second = textIn(value, system === 'us' ? 'si' : 'us', step, safe, precise, bare)
  return second === first ? first : `${first} (${second})`
}

/** In one system; `bare`: told no finer than it is known, but without its ±. */
function textIn(
  value: Quantity,
  system: 'us' | 'si',
  step: number | undefined,
  safe: 'up' | 'down' | undefined,
  precise: boolean,
  bare: boolean,
): string {
  if (value.kind === 'mass' && system === 'us' && !precise && inPounds(value)) {
    return poundsAndOunces(value, bare ? 0 : (value.plusMinus ?? 0), step, safe)
  }
  const shown = stepped(value, system, step ?? tenth(value, system), safe, precise)
  return valueText(shown.value, shown.unit, bare ? undefined : shown.plusMinus, value.kind)
}

/** The quantity in its unit, rounded to the step of what shows it, to the safe side where there is one. */
function stepped(
  given: Quantity,
  system: 'us' | 'si',
  step: number | undefined,
  safe: 'up' | 'down' | undefined,
  precise: boolean,
): ShownValue {
  const shown = show(given, { units: system, precise, onScreen: true })
  if (precise || (step === undefined && safe === undefined)) return shown
  const unit = requireUnit(given.kind, shown.unit)
  const exact = (given.si - unit.offset) / unit.factor
  const finest =
    step === undefined ? unitStep(shown.value, given.kind) : Math.abs(step / unit.factor)
  const grid = niceStep(finest)
  // A unit that counts downward (inHg vac) turns the safe side round.
  const up = safe === undefined ? undefined : (safe === 'up') === unit.factor > 0
  const steps = exact / grid
  const tidy = Number(steps.toPrecision(12))
  const rounded = up === undefined ? Math.round(tidy) : up ? Math.ceil(tidy) : Math.floor(tidy)
  const value = Number((rounded * grid).toPrecision(12))
  // A ± that the scale cannot show says nothing.
  const unseen = step !== undefined && (shown.plusMinus ?? 0) < grid / 2
  return { ...shown, value, plusMinus: unseen ? undefined : shown.plusMinus }
}

/** One in the third figure of a value; a mass is told as finely as the one that it limits. */
function unitStep(value: number, kind: Quantity['kind']): number {
  const third = value === 0 ? 0.01 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2)
  const decimals = String(value).split('.')[1]?.length ?? 0
  return kind === 'mass' && decimals > 0 ? Math.min(third, 10 ** -decimals) : third
}

/** The step of 1, 2 or 5 times a power of ten that is not finer than `step`. */
function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step) + 1e-9)
  const found = [1, 2, 5, 10].find((times) => times * power >= step * (1 - 1e-9)) ?? 10
  return found * power
}

function valueText(
  value: number,
  unit: string,
  plusMinus: number | undefined,
  kind: Quantity['kind'],
): string {
  const spaced = unit === '%' ? ' %' : ` ${unit}`
  if (plusMinus === undefined || (plusMinus === 0 && kind !== 'fraction'))
    return `${decimalText(value)}${spaced}`
  return `${decimalText(value)} ±${decimalText(plusMinus)}${spaced}`
}

const OUNCES = 16
const TENTH_KG = quantity('mass', 0.1, 'oz').si

/** From ten ounces on no scale in a shop shows hundredths. */
const tenth = ({ kind, shownIn, si }: Quantity, system: 'us' | 'si') =>
  kind === 'mass' && system === 'us' && shownIn === undefined && Math.abs(si) >= 100 * TENTH_KG
    ? TENTH_KG
    : undefined

/** From two pounds on, where nobody asked for another unit. */
const inPounds = (given: Quantity) =>
  given.shownIn === undefined && Math.abs(given.to('oz')) >= 2 * OUNCES

/** "2 lb 15.5 oz", as people write it, in tenths of an ounce or in the steps of the scale. */
function poundsAndOunces(
  given: Quantity,
  plusMinusKg: number,
  step?: number,
  safe?: 'up' | 'down',
): string {
  const grid = step === undefined ? 0.1 : niceStep(quantity('mass', step, 'kg').to('oz'))
  const steps = Number((given.to('oz') / grid).toPrecision(12))
  const whole =
    safe === 'up' ? Math.ceil(steps) : safe === 'down' ? Math.floor(steps) : Math.round(steps)
  const ounces = Number((whole * grid).toPrecision(12))
  const pounds = Math.trunc(ounces / OUNCES)
  const rest = Number(Math.abs(ounces - pounds * OUNCES).toPrecision(6))
  const amount = rest === 0 ? `${pounds} lb` : `${pounds} lb ${rest} oz`
  const width = quantity('mass', plusMinusKg, 'kg').to('oz')
  // A ± that the scale cannot show says nothing.
  if (width < grid / 2) return amount
  return `${amount} ±${Number(width.toPrecision(2))} oz`
}
