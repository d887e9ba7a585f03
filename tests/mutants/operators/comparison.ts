import type { Node } from 'oxc-parser'
import { numberOf, type Operator } from './operator.ts'

/** Each comparison turned round first, then moved by its boundary. */
const CHANGED: Readonly<Record<string, readonly string[]>> = {
  '<': ['>=', '<='],
  '<=': ['>', '<'],
  '>': ['<=', '>='],
  '>=': ['<', '>'],
  '===': ['!=='],
  '!==': ['==='],
}

/** A convergence test: stopping one step later or sooner is the same answer. */
function isConvergence(node: Node): boolean {
  const value = numberOf(node)
  return value !== undefined && value !== 0 && Math.abs(value) < 1e-6
}

/** `<` for `>=`, `<` for `<=`, `===` for `!==`. */
export const comparison: Operator = (node, parents, text) => {
  if (node.type !== 'BinaryExpression') return []
  const changed = CHANGED[node.operator]
  if (changed === undefined || isConvergence(node.right) || isConvergence(node.left)) return []
  // A loop's own bound: turned round it does nothing, moved it runs off the end or stops short.
  const isLoop = parents.at(-1)?.type === 'ForStatement'
  const from = text.indexOf(node.operator, node.left.end)
  return [
    {
      start: from,
      end: from + node.operator.length,
      operator: 'comparison',
      variants: isLoop ? changed.slice(0, 1) : changed,
    },
  ]
}
