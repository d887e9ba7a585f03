import { type ShownValue, show } from './present.ts'
import type { Quantity } from './quantity.ts'

/** Significant figures that no gauge or scale exceeds, and enough for the other system beside it. */
const LEADING = 4
const BESIDE = 3

/** A quantity inside a sentence, in both unit systems: "12.3 lb (5.58 kg)"; as typed where it was typed. */
export function say(quantity: Quantity): string {
  const shown = show(quantity, { units: 'both', precise: false, onScreen: true })
  const first = quantity.shownIn === undefined ? trimmed(shown, LEADING) : shown
  return both(first, shown.also && trimmed(shown.also, BESIDE))
}

const both = (first: ShownValue, also: ShownValue | undefined) =>
  also ? `${withBand(first)} (${withBand(also)})` : withBand(first)

/** No more figures than given; whole feet and tenths of a degree stay, and a ± says its own. */
function trimmed(shown: ShownValue, figures: number): ShownValue {
  if (shown.plusMinus !== undefined || /^(?:°.|ft|m)$/u.test(shown.unit)) return shown
  return { ...shown, value: Number(shown.value.toPrecision(figures)) }
}

const withBand = ({ value, unit, plusMinus }: ShownValue) =>
  plusMinus === undefined ? `${value} ${unit}` : `${value} ±${plusMinus} ${unit}`
