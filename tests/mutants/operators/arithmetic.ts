import type { Node } from 'oxc-parser'
import type { Operator } from './operator.ts'

const SWAPPED: Readonly<Record<string, string>> = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '%': '*',
  '**': '*',
  '+=': '-=',
  '-=': '+=',
  '*=': '/=',
  '/=': '*=',
}

/** Whether a sum joins text: there is no `-` of texts. */
function isText(node: Node): boolean {
  if (node.type === 'TemplateLiteral') return true
  if (node.type === 'Literal') return typeof node.value === 'string'
  return node.type === 'BinaryExpression' && (isText(node.left) || isText(node.right))
}

/** `+` for `-`, `*` for `/`; a minus sign lost. */
export const arithmetic: Operator = (node, _, text) => {
  if (node.type === 'BinaryExpression' || node.type === 'AssignmentExpression') {
    const other = SWAPPED[node.operator]
    if (other === undefined || isText(node.left) || isText(node.right)) return []
    const from = text.indexOf(node.operator, node.left.end)
    return [
      { start: from, end: from + node.operator.length, operator: 'arithmetic', variants: [other] },
    ]
  }
  if (node.type === 'UnaryExpression' && node.operator === '-') {
    return [{ start: node.start, end: node.start + 1, operator: 'sign', variants: [' '] }]
  }
  return []
}
