import { type Operator, textOf } from './operator.ts'

/** `&&` for `||`, a condition turned round, a default put over what was given, or lost. */
export const logic: Operator = (node, _, text) => {
  switch (node.type) {
    case 'LogicalExpression': {
      if (node.operator === '??') {
        const variants = [`(${textOf(node.right, text)})`, `(${textOf(node.left, text)})`]
        return [{ start: node.start, end: node.end, operator: 'default', variants }]
      }
      const from = text.indexOf(node.operator, node.left.end)
      const other = node.operator === '&&' ? '||' : '&&'
      return [{ start: from, end: from + 2, operator: 'logic', variants: [other] }]
    }
    case 'UnaryExpression':
      if (node.operator !== '!') return []
      return [{ start: node.start, end: node.start + 1, operator: 'negation', variants: [' '] }]
    case 'ConditionalExpression': {
      const { test } = node
      const variants = [`!(${textOf(test, text)})`]
      return [{ start: test.start, end: test.end, operator: 'condition', variants }]
    }
    case 'IfStatement': {
      const { test } = node
      const variants = [`!(${textOf(test, text)})`]
      return [{ start: test.start, end: test.end, operator: 'condition', variants }]
    }
    case 'Literal':
      if (typeof node.value !== 'boolean') return []
      return [
        { start: node.start, end: node.end, operator: 'boolean', variants: [String(!node.value)] },
      ]
    default:
      return []
  }
}
