import type { Node } from 'oxc-parser'
import type { Spot } from '../types.ts'
import type { Operator } from './operator.ts'

/** One of a list, with the comma that goes with it. */
function withComma(items: readonly Node[], index: number): { start: number; end: number } {
  const item = items[index]
  const next = items[index + 1]
  const before = items[index - 1]
  if (!item) throw new Error('no such item')
  if (next) return { start: item.start, end: next.start }
  return { start: before?.end ?? item.start, end: item.end }
}

const LEAVES: ReadonlySet<string> = new Set([
  'ReturnStatement',
  'ThrowStatement',
  'ContinueStatement',
  'BreakStatement',
])

/** Whether a branch leaves where it stands. */
function leaves(node: Node): boolean {
  if (node.type === 'BlockStatement') return node.body.some(leaves)
  return LEAVES.has(node.type)
}

/** Lost: one of a list or a spread into it, a line that adds to a list, a way out. */
export const removal: Operator = (node) => {
  switch (node.type) {
    case 'ArrayExpression': {
      const items = node.elements.filter((item) => item !== null)
      return items.map((item, index): Spot => {
        const operator = item.type === 'SpreadElement' ? 'spread dropped' : 'item dropped'
        return { ...withComma(items, index), operator, variants: [''] }
      })
    }
    case 'ExpressionStatement':
      if (node.expression.type !== 'CallExpression') return []
      return [{ start: node.start, end: node.end, operator: 'call dropped', variants: [';'] }]
    case 'IfStatement':
      if (node.alternate || !leaves(node.consequent)) return []
      return [{ start: node.start, end: node.end, operator: 'way out dropped', variants: [';'] }]
    default:
      return []
  }
}
