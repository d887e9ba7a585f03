import { show } from './present.ts'
import type { Quantity } from './quantity.ts'

/** A quantity inside a sentence, in both unit systems: "12.3 lb (5.58 kg)". */
export function say(quantity: Quantity): string {
  const shown = show(quantity, { units: 'both', precise: false, onScreen: true })
  const first = withBand(shown)
  return shown.also ? `${first} (${withBand(shown.also)})` : first
}

const withBand = ({
  value,
  unit,
  plusMinus,
}: {
  value: number
  unit: string
  plusMinus?: number | undefined
}) => (plusMinus === undefined ? `${value} ${unit}` : `${value} ±${plusMinus} ${unit}`)
