import type { Node } from 'oxc-parser'
import type { Spot } from '../types.ts'

/** What a file's operators need to know beyond the node. */
export interface Around {
  /** Every identifier of the file. */
  readonly names: ReadonlySet<string>
  /** Every property that any file of the rooms reads or writes. */
  readonly properties: ReadonlySet<string>
}

/** The faults that one kind of thinking slip would make of a node. */
export type Operator = (
  node: Node,
  parents: readonly Node[],
  text: string,
  around: Around,
) => readonly Spot[]

export const textOf = (node: { start: number; end: number }, text: string): string =>
  text.slice(node.start, node.end)

/** The value of a numeric literal, else undefined. */
export const numberOf = (node: Node | undefined): number | undefined =>
  node?.type === 'Literal' && typeof node.value === 'number' ? node.value : undefined
