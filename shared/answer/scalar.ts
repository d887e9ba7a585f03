import type { ShownQuantity, ShownValue } from '../quantity/index.ts'

/** A figure without a unit that may have an uncertainty. */
interface Ratio {
  readonly value: number
  readonly plusMinus?: number
}

export type Scalar = string | number | boolean | ShownQuantity | Ratio

const QUANTITY_KEYS: ReadonlySet<string> = new Set(['value', 'unit', 'plusMinus', 'also'])

/** Whether a part of an answer is a figure with its unit. */
export function isQuantity(value: unknown): value is ShownQuantity {
  if (typeof value !== 'object' || value === null) return false
  const { value: amount, unit } = value as Partial<ShownQuantity>
  return (
    typeof amount === 'number' &&
    typeof unit === 'string' &&
    Object.keys(value).every((key) => QUANTITY_KEYS.has(key))
  )
}

function isRatio(value: unknown): value is Ratio {
  if (typeof value !== 'object' || value === null) return false
  const { value: amount, plusMinus } = value as Partial<Ratio>
  const others = Object.keys(value).length - (plusMinus === undefined ? 1 : 2)
  return typeof amount === 'number' && others === 0
}

export const isScalar = (value: unknown): value is Scalar =>
  typeof value === 'string' ||
  typeof value === 'number' ||
  typeof value === 'boolean' ||
  isQuantity(value) ||
  isRatio(value)

/** Digits that a plain ratio is shown with; quantities come rounded already. */
const RATIO_DIGITS = 4

/** A number as it stands in a line. */
export function numberText(value: number, precise: boolean): string {
  return String(
    precise || Number.isInteger(value) ? value : Number(value.toPrecision(RATIO_DIGITS)),
  )
}

/** "36.3 ±0.5 °F" */
export function valueText({ value, unit, plusMinus }: ShownValue): string {
  const band = plusMinus === undefined ? '' : ` ±${plusMinus}`
  return `${value}${band} ${unit}`
}

/** One of an operation's own words, such as `cannot-tell`: people read it without the hyphens. */
const CHOICE = /^[a-z]+(?:-[a-z]+)+$/u

/** Any scalar in one line; a quantity with both unit systems as "36.3 °F (2.4 °C)". */
export function scalarText(value: Scalar, precise: boolean): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') return numberText(value, precise)
  if (typeof value === 'string') return CHOICE.test(value) ? value.replaceAll('-', ' ') : value
  if (!isQuantity(value)) {
    const band = value.plusMinus === undefined ? '' : ` ±${numberText(value.plusMinus, precise)}`
    return numberText(value.value, precise) + band
  }
  return value.also ? `${valueText(value)} (${valueText(value.also)})` : valueText(value)
}
