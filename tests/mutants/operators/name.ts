import type { Operator } from './operator.ts'

const PAIRS: readonly (readonly [string, string])[] = [
  ['dew', 'bubble'],
  ['liquid', 'vapour'],
  ['low', 'high'],
  ['lower', 'upper'],
  ['lowest', 'highest'],
  ['above', 'below'],
  ['suction', 'discharge'],
  ['inside', 'outside'],
  ['first', 'last'],
  ['smaller', 'larger'],
  ['min', 'max'],
  ['cos', 'sin'],
  ['log', 'exp'],
]
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)
const OTHER = new Map(
  PAIRS.flatMap(([a, b]) => [
    [a, b],
    [b, a],
    [capital(a), capital(b)],
    [capital(b), capital(a)],
  ]),
)
/** The words of `dewPoint`, `low-side`, `atDew`. */
const WORD = /[A-Z]?[a-z]+/gu

/** The name with one of its words put for its counterpart, in each way there is. */
export function swapped(name: string): readonly string[] {
  return [...name.matchAll(WORD)].flatMap(({ 0: word, index }) => {
    const other = OTHER.get(word)
    if (other === undefined) return []
    return [name.slice(0, index) + other + name.slice(index + word.length)]
  })
}

/** Dew for bubble, liquid for vapour, low for high, smaller end for larger: wherever the other name exists. */
export const name: Operator = (node, parents, _, { names, properties }) => {
  const parent = parents.at(-1)
  if (node.type === 'Literal' && typeof node.value === 'string') {
    if (parent?.type === 'Property' && parent.key === node) return []
    const variants = swapped(node.value).filter((other) => properties.has(other))
    return variants.length === 0
      ? []
      : [
          {
            start: node.start + 1,
            end: node.end - 1,
            operator: 'name',
            variants,
          },
        ]
  }
  if (node.type !== 'Identifier') return []
  const isMember = parent?.type === 'MemberExpression' && parent.property === node
  const isValue =
    parent?.type === 'CallExpression' ||
    parent?.type === 'BinaryExpression' ||
    parent?.type === 'ReturnStatement' ||
    (parent?.type === 'Property' && parent.value === node && !parent.shorthand)
  if (!isMember && !isValue) return []
  const known = isMember ? properties : names
  const variants = swapped(node.name).filter((other) => known.has(other) || isMath(parent, other))
  return variants.length === 0
    ? []
    : [{ start: node.start, end: node.end, operator: 'name', variants }]
}

function isMath(parent: Parameters<Operator>[0] | undefined, other: string): boolean {
  return (
    parent?.type === 'MemberExpression' &&
    parent.object.type === 'Identifier' &&
    parent.object.name === 'Math' &&
    other in Math
  )
}
