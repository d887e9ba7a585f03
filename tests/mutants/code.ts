import { type Node, parseSync } from 'oxc-parser'
import { arithmetic } from './operators/arithmetic.ts'
import { comparison } from './operators/comparison.ts'
import { logic } from './operators/logic.ts'
import { name } from './operators/name.ts'
import { number } from './operators/number.ts'
import type { Operator } from './operators/operator.ts'
import { removal } from './operators/removal.ts'
import { uncertainty } from './operators/uncertainty.ts'
import type { Spot } from './types.ts'
import { walk } from './walk.ts'

const OPERATORS: readonly Operator[] = [
  arithmetic,
  comparison,
  logic,
  name,
  number,
  removal,
  uncertainty,
]

function parse(file: string, text: string) {
  const { program, errors } = parseSync(file, text)
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`)
  return program
}

/** Whether the text is still a program: what does not parse is no fault anybody could make. */
export function parses(file: string, text: string): boolean {
  return parseSync(file, text).errors.length === 0
}

/** Every word of the text that could be a name. */
export const wordsOf = (text: string): readonly string[] =>
  text.match(/[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*/gu) ?? []

/**
 * Where faults can be put into a TypeScript file. `properties` are the names that exist
 * anywhere in the rooms: only a name that exists is swapped for another.
 */
export function codeSpots(
  file: string,
  text: string,
  properties: ReadonlySet<string>,
): readonly Spot[] {
  const spots: Spot[] = []
  const names = new Set(wordsOf(text))
  walk(parse(file, text), (node: Node, parents) => {
    for (const operator of OPERATORS) {
      spots.push(...operator(node, parents, text, { names, properties }))
    }
  })
  return spots
}
