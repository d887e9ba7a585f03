import { numberOf, type Operator } from './operator.ts'

/** Without the noise of the last binary digit. */
const written = (value: number): string => String(Number(value.toPrecision(12)))

/** A figure that is a tenth or twice or half off, or one beside. */
export function wrongNumbers(value: number): readonly string[] {
  const others = [value * 1.1, value * 2, value / 2, value + 1, value - 1]
  return [...new Set(others.filter((other) => other !== value && other >= 0).map(written))]
}

/**
 * Constants that say how far a search steps, how often it is tried anew, when it gives up or is near
 * enough, and how much is kept for the next time: more or less does as well.
 */
const SEARCH =
  /(?:STEPS?|BISECTIONS|HALVINGS|ITERATIONS|REFINEMENTS|RUNGS|LADDER|WIDEN|TOLERANCE|MOST_(?:KEPT|SYMBOLS|SPELLINGS))$/u

/** A constant of the code changed. Below 1e-6 it is a bound of convergence too. */
export const number: Operator = (node, parents) => {
  const value = numberOf(node)
  if (value === undefined || (value !== 0 && value < 1e-6)) return []
  const named = parents.findLast((parent) => parent.type === 'VariableDeclarator')
  if (named?.id.type === 'Identifier' && SEARCH.test(named.id.name)) return []
  return [{ start: node.start, end: node.end, operator: 'number', variants: wrongNumbers(value) }]
}
