import * as z from 'zod'
import { operation } from '../../shared/operations.ts'

interface Node {
  readonly enum?: readonly unknown[]
  readonly properties?: Readonly<Record<string, Node>>
  readonly items?: Node
  readonly anyOf?: readonly Node[]
}

function* choicesIn(node: Node, path: readonly string[]): Generator<string> {
  if (node.enum) yield `${path.join('.')}: ${node.enum.join(' ')}`
  for (const [name, below] of Object.entries(node.properties ?? {})) {
    yield* choicesIn(below, [...path, name])
  }
  for (const below of [node.items, ...(node.anyOf ?? [])]) if (below) yield* choicesIn(below, path)
}

const of = (schema: z.ZodType, io: 'input' | 'output') => [
  ...new Set(choicesIn(z.toJSONSchema(schema, { io, unrepresentable: 'any' }) as Node, [])),
]

/** Every choice in the result of an operation, "path: words in their order". */
export const answered = (name: string) =>
  of((operation(name) as unknown as { result: z.ZodType }).result, 'output')

/** Every choice among its fields. */
export const asked = (name: string) =>
  of(
    z.strictObject((operation(name) as unknown as { fields: z.core.$ZodLooseShape }).fields),
    'input',
  )
