import type { Node } from 'oxc-parser'
import type { Operator } from './operator.ts'

const BAND = /plusMinus|uncertainty|halfWidth/iu

const isBand = (node: Node): boolean => {
  if (node.type === 'Identifier') return BAND.test(node.name)
  if (node.type === 'MemberExpression') return isBand(node.property)
  return false
}

/** A ± dropped on its way; a root of squares that becomes the smaller part. */
export const uncertainty: Operator = (node, _, text) => {
  if (node.type === 'CallExpression') {
    const dropped = node.arguments
      .filter(isBand)
      .map(({ start, end }) => ({ start, end, operator: '± dropped', variants: ['undefined'] }))
    const isHypot =
      text.slice(node.callee.start, node.callee.end) === 'Math.hypot' && node.arguments.length > 1
    return isHypot
      ? [
          ...dropped,
          {
            start: node.callee.start,
            end: node.callee.end,
            operator: 'smaller end',
            variants: ['Math.min'],
          },
        ]
      : dropped
  }
  if (node.type === 'Property' && !node.computed && isBand(node.key) && node.kind === 'init') {
    if (node.value.type === 'AssignmentPattern' || node.value.type === 'Identifier') {
      if (!node.shorthand) {
        const { start, end } = node.value
        return [{ start, end, operator: '± dropped', variants: ['undefined'] }]
      }
      const variants = [`${text.slice(node.key.start, node.key.end)}: undefined`]
      return [{ start: node.start, end: node.end, operator: '± dropped', variants }]
    }
    const { start, end } = node.value
    return [{ start, end, operator: '± dropped', variants: ['undefined'] }]
  }
  return []
}
