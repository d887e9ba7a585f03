import type { Node } from 'oxc-parser'

export type Visit = (node: Node, parents: readonly Node[]) => void

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof Reflect.get(value, 'type') === 'string'

/** TypeScript's wrappers around a value; every other `TS…` node is type only. */
const WRAPPERS: ReadonlySet<string> = new Set([
  'TSAsExpression',
  'TSSatisfiesExpression',
  'TSNonNullExpression',
])
/** Fields whose text people read: no calculation hangs on it. */
const PROSE: ReadonlySet<string> = new Set([
  'description',
  'detail',
  'example',
  'examples',
  'formula',
  'hint',
  'label',
  'message',
  'note',
  'summary',
  'text',
  'title',
])
/** Calls whose arguments are text. */
const PROSE_CALLS: ReadonlySet<string> = new Set(['describe', 'meta'])

const nameOf = (node: Node | null): string | undefined =>
  node?.type === 'Identifier' ? node.name : undefined

/** Whether nothing that is computed hangs on the node: types, imports, messages, dead ends. */
function isSkipped(node: Node): boolean {
  if (node.type.startsWith('TS')) return !WRAPPERS.has(node.type)
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'TemplateLiteral':
    case 'TaggedTemplateExpression':
    case 'ThrowStatement':
      return true
    case 'SwitchCase':
      return node.test === null
    case 'Property':
      return PROSE.has(nameOf(node.key) ?? '')
    case 'CallExpression':
      return (
        node.callee.type === 'MemberExpression' &&
        PROSE_CALLS.has(nameOf(node.callee.property) ?? '')
      )
    default:
      return false
  }
}

/** The value inside of a chain such as `z.string().describe('…')`, which is skipped itself. */
function innerOf(node: Node): Node | undefined {
  if (node.type !== 'CallExpression' || node.callee.type !== 'MemberExpression') return undefined
  return node.callee.object
}

/** Visits every node that something computed may hang on, parents first. */
export function walk(node: Node, visit: Visit, parents: readonly Node[] = []): void {
  if (isSkipped(node)) {
    const inner = innerOf(node)
    if (inner) walk(inner, visit, parents)
    return
  }
  visit(node, parents)
  const below = [...parents, node]
  for (const [key, value] of Object.entries(node)) {
    if (key === 'typeAnnotation' || key === 'typeArguments' || key === 'returnType') continue
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child)) walk(child, visit, below)
    }
  }
}
