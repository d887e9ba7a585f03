import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'esbuild'
import { parseSync } from 'oxc-parser'

/** What makes the program of the edge small: none of it changes an answer. */

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

/** The documents lie among the files, so nothing that makes them is in the program. */
export const STORED_DOCUMENTS: Plugin = {
  name: 'stored documents',
  setup(bundle) {
    bundle.onResolve({ filter: /documents.made[.]ts$/ }, () => ({
      path: `${ROOT}worker/documents/stored.ts`,
    }))
  },
}

/**
 * What schemas say of fields, and the schemas of answers, are there for the OpenAPI document alone; an
 * answer is checked against them by tests. So both are left out, as is then every schema that nobody uses.
 */
export const WITHOUT_DESCRIPTIONS: Plugin = {
  name: 'without descriptions',
  setup(bundle) {
    bundle.onLoad({ filter: /.shared..*[.]ts$/ }, ({ path }) => {
      const code = readFileSync(path, 'utf8')
      return {
        contents: /\bz\.|describe\(|defineOperation/u.test(code) ? leaner(path, code) : code,
        loader: 'ts',
      }
    })
  },
}

/** A part of a text and what stands there instead. */
interface Edit {
  readonly from: number
  readonly to: number
  readonly text: string
}

interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [name: string]: unknown
}

export function leaner(path: string, code: string): string {
  const edits: Edit[] = []
  const { program, errors } = parseSync(path, code)
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`)
  each(program as unknown as Node, (node) => {
    if (isDescription(node)) {
      edits.push({ from: child(child(node, 'callee'), 'object').end, to: node.end, text: '' })
    }
    const output = outputOf(node)
    if (output) edits.push(output)
  })
  for (const init of schemasOf(program as unknown as Node)) {
    edits.push({ from: init.start, to: init.start, text: '/* @__PURE__ */ (() => (' })
    edits.push({ from: init.end, to: init.end, text: '))()' })
  }
  return edited(code, edits)
}

/** `.describe('…')` behind a schema. */
function isDescription(node: Node): boolean {
  if (node.type !== 'CallExpression') return false
  const callee = child(node, 'callee')
  return callee.type === 'MemberExpression' && child(callee, 'property').name === 'describe'
}

/** The schema of an answer: `result` of a definition, and `output` of the frame that all share. */
function outputOf(node: Node): Edit | undefined {
  if (node.type === 'CallExpression' && child(node, 'callee').name === 'defineOperation') {
    const [definition] = node.arguments as readonly Node[]
    const properties = (definition?.properties ?? []) as readonly Node[]
    const result = properties.find((entry) => (entry.key as Node | undefined)?.name === 'result')
    return result && { from: result.start, to: result.end, text: 'result: undefined as never' }
  }
  if (node.type !== 'VariableDeclarator' || child(node, 'id').name !== 'output') return undefined
  const init = node.init as Node | null
  return init?.type === 'CallExpression'
    ? { from: init.start, to: init.end, text: 'undefined as never' }
    : undefined
}

/** Values of constants of a module that makes schemas: not made where nobody uses the constant. */
function schemasOf(program: Node): readonly Node[] {
  if (!isOfSchemas(program)) return []
  return (program.body as readonly Node[]).flatMap((statement) => {
    const declared =
      statement.type === 'ExportNamedDeclaration'
        ? (statement.declaration as Node | null)
        : statement
    if (declared?.type !== 'VariableDeclaration') return []
    return (declared.declarations as readonly Node[]).flatMap(({ init }) => {
      const value = init as Node | null
      if (value === null || value.type === 'ArrowFunctionExpression') return []
      let isMade = false
      each(value, ({ type }) => {
        isMade ||= type === 'CallExpression'
      })
      return isMade ? [value] : []
    })
  })
}

const isOfSchemas = (program: Node) =>
  (program.body as readonly Node[]).some(
    (statement) =>
      statement.type === 'ImportDeclaration' && child(statement, 'source').value === 'zod',
  )

const child = (node: Node, name: string) => node[name] as Node

function each(node: unknown, visit: (node: Node) => void): void {
  if (Array.isArray(node)) for (const one of node) each(one, visit)
  else if (typeof node === 'object' && node !== null) {
    if ('type' in node && typeof node.type === 'string') visit(node as Node)
    for (const part of Object.values(node)) each(part, visit)
  }
}

/** Every edit that is in no larger one. */
function edited(code: string, edits: readonly Edit[]): string {
  const inside = (edit: Edit) =>
    edits.some(
      (other) =>
        other !== edit &&
        other.from < other.to &&
        (edit.from < edit.to
          ? other.from <= edit.from && edit.to <= other.to
          : other.from < edit.from && edit.to < other.to),
    )
  const sorted = edits
    .filter((edit) => !inside(edit))
    .toSorted((a, b) => a.from - b.from || a.to - b.to)
  let text = ''
  let at = 0
  for (const edit of sorted) {
    text += code.slice(at, edit.from) + edit.text
    at = edit.to
  }
  return text + code.slice(at)
}
