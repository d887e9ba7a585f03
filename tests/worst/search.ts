import fc from 'fast-check'
import * as z from 'zod'
import type { JsonSchema } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { randomFrom } from '../../shared/random.ts'
import { arbitraryInput } from '../support/arbitrary-input.ts'
import { changed } from './change.ts'
import { costOf, isAnswered } from './cost.ts'
import { extremesOf } from './extremes.ts'

/** How far a search goes. */
export interface Effort {
  /** Inputs drawn from the schema. */
  readonly drawn: number
  /** Changed inputs that are tried after that, each from one of the dearest. */
  readonly changes: number
  readonly seed: number
}

/** An input and its CPU time, ms. */
export interface Tried {
  readonly text: string
  readonly ms: number
}

/** The dearest inputs that were found, and beside them what the example costs. */
export interface Worst {
  readonly tried: number
  readonly exampleMs: number
  readonly answered: Tried
  readonly refused: Tried
}

const WARM_UP = 60
const KEPT = 12
/** Longest body of one input, bytes: what is longer is refused unread. */
const LONGEST = 256 * 1024

/** Searches an operation for its dearest input: drawn, made by hand, then changed while it pays. */
export function worstOf(
  operation: Operation,
  { drawn, changes, seed }: Effort,
  known: readonly string[] = [],
): Worst {
  for (let turn = 0; turn < WARM_UP; turn += 1) {
    isAnswered(operation, JSON.stringify(operation.example))
  }
  const random = randomFrom(seed)
  const pool = fc.sample(arbitraryInput(operation), { numRuns: drawn, seed })
  const answered: Tried[] = []
  const refused: Tried[] = []
  let tried = 0
  const attempt = (text: string) => {
    if (text.length > LONGEST) return
    tried += 1
    const leasts = [answered, refused].map((list) => (list.length < KEPT ? 0 : list.at(-1)?.ms))
    const cost = costOf(operation, text, Math.min(...leasts.map((least) => least ?? 0)))
    if (cost) keep(cost.valid ? answered : refused, { text, ms: cost.ms })
  }
  const texts = [...pool, ...extremesOf(operation)].map((input) => JSON.stringify(input))
  for (const text of [...known, ...texts]) attempt(text)
  const schema = schemaOf(operation)
  for (let turn = 0; turn < changes; turn += 1) {
    const from = answered[Math.floor(random() ** 2 * answered.length)]
    const other = pool[Math.floor(random() * pool.length)]
    if (!from || !other) break
    const parent = JSON.parse(from.text) as Record<string, unknown>
    attempt(JSON.stringify(changed(parent, other, schema, random)))
  }
  return {
    tried,
    exampleMs: costOf(operation, JSON.stringify(operation.example))?.ms ?? Number.NaN,
    answered: again(operation, answered),
    refused: again(operation, refused),
  }
}

const schemaOf = ({ input }: Operation) =>
  z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }) as JsonSchema

/** Keeps the dearest, each once, dearest first. */
function keep(list: Tried[], entry: Tried): void {
  const last = list.at(-1)
  if (list.length >= KEPT && last && entry.ms <= last.ms) return
  if (list.some(({ text }) => text === entry.text)) return
  list.push(entry)
  list.sort((a, b) => b.ms - a.ms)
  list.length = Math.min(list.length, KEPT)
}

/** Measures the kept ones again, so that none leads by an odd run. */
function again(operation: Operation, list: readonly Tried[]): Tried {
  const measured = list.map(({ text }) => ({ text, ms: costOf(operation, text)?.ms ?? Number.NaN }))
  return measured.toSorted((a, b) => b.ms - a.ms)[0] ?? { text: '', ms: Number.NaN }
}
