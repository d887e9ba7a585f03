import { numberOf, type Operator } from './operator.ts'

/** Without the noise of the last binary digit. */
const written = (value: number): string => String(Number(value.toPrecision(12)))

/** A figure that is a tenth or twice or half off, or one beside. */
export function wrongNumbers(value: number): readonly string[] {
  const others = [value * 1.1, value * 2, value / 2, value + 1, value - 1]
  return [...new Set(others.filter((other) => other !== value && other >= 0).map(written))]
}

/** A constant of the code changed. Below 1e-6 it is a bound of convergence, where more or less does as well. */
export const number: Operator = (node) => {
  const value = numberOf(node)
  if (value === undefined || (value !== 0 && value < 1e-6)) return []
  return [{ start: node.start, end: node.end, operator: 'number', variants: wrongNumbers(value) }]
}
