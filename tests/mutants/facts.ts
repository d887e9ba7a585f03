import type { Node } from 'oxc-parser'
import { wrongNumbers } from './operators/number.ts'
import type { Spot } from './types.ts'

const DATE = /^(\d{4})((?:-\d{2}){1,2})$/u
/** A number on its own, no part of a name such as R-134a or of a web address. */
const NUMBER = /(?<![\w.-])\d+(?:\.\d+)?(?![\w-]|\.\d)/gu

/** Answers that a table can give, in the order in which they first stand there. */
export const answersOf = (text: string): readonly string[] => [
  ...new Set([...text.matchAll(/"answer": "([^"]+)"/gu)].map(([, answer = '']) => answer)),
]

/** A fact turned round or moved: a boolean, a date. */
export function factSpots(node: Node): readonly Spot[] {
  if (node.type !== 'Literal') return []
  const { start, end, value } = node
  if (typeof value === 'boolean') {
    return [{ start, end, operator: 'boolean', variants: [String(!value)] }]
  }
  const [, year, rest] = (typeof value === 'string' && DATE.exec(value)) || []
  if (year === undefined) return []
  const variants = [-1, 1].map((by) => `"${Number(year) + by}${rest}"`)
  return [{ start, end, operator: 'date', variants }]
}

/** What a rule of law says: a figure of its text or of the section it names, the answer of a row. */
export function ruleSpots(
  node: Node,
  text: string,
  offset: number,
  answers: readonly string[],
): readonly Spot[] {
  if (node.type !== 'Property' || node.key.type !== 'Literal') return []
  const { value } = node
  if (value.type !== 'Literal' || typeof value.value !== 'string') return []
  const raw = text.slice(value.start - offset, value.end - offset)
  switch (node.key.value) {
    case 'text':
    case 'section':
      return [...raw.matchAll(NUMBER)].map(({ 0: figure, index }) => ({
        start: value.start + index,
        end: value.start + index + figure.length,
        operator: 'figure in words',
        variants: wrongNumbers(Number(figure)),
      }))
    case 'answer': {
      const variants = answers.filter((other) => other !== value.value)
      const { start, end } = value
      return [{ start: start + 1, end: end - 1, operator: 'answer', variants }]
    }
    default:
      return []
  }
}
