import { decadeOf } from './decade.ts'

/** One digit of the uncertainty, two when it begins with 1 or 2 (GUM 7.2.6 asks for two at most). */
export function decimalsFor(plusMinus: number, fallback: number): number {
  if (plusMinus === 0) return fallback
  const exponent = decadeOf(plusMinus)
  // 0.3 / 0.1 is a last digit below 3
  const leading = (plusMinus / tenTo(exponent)) * (1 + 1e-12)
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
export function roundTo(value: number, decimals: number): number {
  const power = tenTo(decimals)
  const scaled = value * power
  const nearest = Math.round(scaled)
  const isSure =
    Math.abs(scaled) < SURE_BELOW && Math.abs(Math.abs(scaled - nearest) - 0.5) > NEAR_TIE
  const rounded = isSure ? nearest / power : Number(value.toFixed(decimals))
  return rounded === 0 ? 0 : rounded
}

/** An uncertainty is never rounded to less than half of itself, nor to nothing. */
export const roundUp = (value: number, decimals: number) => {
  const step = tenTo(-decimals)
  return roundTo(Math.max(Math.ceil(value / step - 0.05) * step, value === 0 ? 0 : step), decimals)
}

/** Decimals beyond the usual ones that a small figure may take. */
const MOST_MORE = 3

/**
 * Decimals that keep three significant figures, so that rounding moves no limit by more than half a
 * percent; of a figure far below the usual decimals only as many as anybody can use.
 */
export const threeFigures = (size: number, decimals: number) =>
  size === 0 ? 0 : Math.min(Math.max(2 - decadeOf(size), 0), decimals + MOST_MORE, 15)

/** Cuts the last digits, which conversion factors leave as noise. */
export const tidy = (value: number) => Number(value.toPrecision(14))
