/** Figures are shown with few decimals; with so many a number below the limit is a whole number of steps. */
const STEPS = 1e3
const LIMIT = 1e6

/**
 * A number as `String` writes it, several times as fast where it has at most three decimals: the
 * shortest text that reads back as a number has just the digits of that decimal fraction.
 */
export function decimalText(value: number): string {
  const steps = Math.round(value * STEPS)
  if (steps / STEPS !== value || Math.abs(value) >= LIMIT) return String(value)
  const size = Math.abs(steps)
  const whole = Math.trunc(size / STEPS)
  const rest = size - whole * STEPS
  const signed = steps < 0 ? `-${whole}` : `${whole}`
  if (rest === 0) return signed
  if (rest % 100 === 0) return `${signed}.${rest / 100}`
  if (rest % 10 === 0) return `${signed}.${rest < 100 ? '0' : ''}${rest / 10}`
  return `${signed}.${rest < 10 ? '00' : rest < 100 ? '0' : ''}${rest}`
}
