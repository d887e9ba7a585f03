import { type Node, parseSync } from 'oxc-parser'
import { answersOf, factSpots, ruleSpots } from './facts.ts'
import { wrongNumbers } from './operators/number.ts'
import { numberOf } from './operators/operator.ts'
import { removal } from './operators/removal.ts'
import type { Spot } from './types.ts'

/** Text to read, not a name that something looks up. */
const isProse = (node: Node): boolean =>
  node.type === 'Literal' && typeof node.value === 'string' && / .* /u.test(node.value)

/** A figure with its unit, as a person writes it: `"41 psig"`. */
const WRITTEN = /^(\d+(?:\.\d+)?)( [^\s\d]\S*){1,2}$/u

function writtenFigure(node: Node): readonly Spot[] {
  if (node.type !== 'Literal' || typeof node.value !== 'string') return []
  const [, figure] = WRITTEN.exec(node.value) ?? []
  if (figure === undefined) return []
  const start = node.start + 1
  const variants = wrongNumbers(Number(figure))
  return [{ start, end: start + figure.length, operator: 'figure', variants }]
}

/** Rows of an object that is a table: every value is an object of its own. */
function tableRows(node: Node): readonly Spot[] {
  if (node.type !== 'ObjectExpression' || node.properties.length < 2) return []
  const isTable = node.properties.every(
    (row) => row.type === 'Property' && row.value.type === 'ObjectExpression',
  )
  if (!isTable) return []
  return node.properties.map((row, index): Spot => {
    const next = node.properties[index + 1]
    const before = node.properties[index - 1]
    return {
      start: next || !before ? row.start : before.end,
      end: next?.start ?? row.end,
      operator: 'row dropped',
      variants: [''],
    }
  })
}

function listRows(node: Node): readonly Spot[] {
  if (node.type !== 'ArrayExpression' || node.elements.length < 2) return []
  if (node.elements.some((item) => item === null || isProse(item))) return []
  return removal(node, [], '', { names: new Set(), properties: new Set() }).map((spot) => ({
    ...spot,
    operator: 'row dropped',
  }))
}

/** Where faults can be put into a table: a number, a fact or what a rule says changed, a row dropped. */
export function figureSpots(file: string, text: string): readonly Spot[] {
  const spots: Spot[] = []
  // A JSON text in parentheses is an expression of the language.
  const { program, errors } = parseSync(`${file}.js`, `(${text})`)
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`)
  const isLaw = file.startsWith('data/rules/')
  const answers = answersOf(text)
  const visit = (node: Node): void => {
    const value = numberOf(node)
    if (value !== undefined) {
      const variants = wrongNumbers(value)
      spots.push({ start: node.start, end: node.end, operator: 'figure', variants })
    }
    spots.push(...writtenFigure(node), ...tableRows(node), ...listRows(node), ...factSpots(node))
    if (isLaw) spots.push(...ruleSpots(node, text, 1, answers))
    for (const child of childrenOf(node)) visit(child)
  }
  visit(program)
  return spots.map((spot) => ({ ...spot, start: spot.start - 1, end: spot.end - 1 }))
}

function childrenOf(node: Node): readonly Node[] {
  switch (node.type) {
    case 'Program':
      return node.body
    case 'ExpressionStatement':
    case 'ParenthesizedExpression':
      return [node.expression]
    case 'ObjectExpression':
      return node.properties
    case 'Property':
      return [node.value]
    case 'ArrayExpression':
      return node.elements.filter((item) => item !== null)
    default:
      return []
  }
}
