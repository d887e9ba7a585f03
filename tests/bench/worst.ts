import { operation } from '../../shared/operations.ts'
import { costOf, isAnswered } from '../worst/cost.ts'
import { extremesOf } from '../worst/extremes.ts'
import found from '../worst/found.json' with { type: 'json' }

const WARM_UP = 30
/** Their dearest inputs are too long to be kept: some are made. */
const MADE = ['table', 'evacuation', 'work-order']
const MOST_MADE = 4

const inputs = (): readonly (readonly [string, readonly string[]])[] => [
  ...Object.entries(found as Readonly<Record<string, readonly string[]>>),
  ...MADE.map((name) => {
    const made = extremesOf(operation(name)).slice(0, MOST_MADE)
    return [name, made.map((input) => JSON.stringify(input))] as const
  }),
]

/** CPU time of the dearest inputs that `npm run worst` has found so far, ms each. */
export const worstBench = (): readonly { readonly what: string; readonly ms: number }[] =>
  inputs().flatMap(([what, texts]) => {
    const asked = operation(what)
    const example = JSON.stringify(asked.example)
    for (let turn = 0; turn < WARM_UP; turn += 1) isAnswered(asked, example)
    return texts.map((input) => ({ what, ms: costOf(asked, input)?.ms ?? Number.NaN }))
  })
