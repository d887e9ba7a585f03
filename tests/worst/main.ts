import { readFileSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { operations } from '../../shared/operations.ts'
import { worstOf } from './search.ts'

/**
 * Searches each operation for the valid input that costs most CPU time: `npm run worst -- --operation charge
 * --drawn 2000 --changes 2000 --seed 1`; `--keep` writes what was found into the list that the bench times.
 */
const { values } = parseArgs({
  options: {
    operation: { type: 'string', multiple: true },
    drawn: { type: 'string', default: '1500' },
    changes: { type: 'string', default: '1500' },
    seed: { type: 'string' },
    keep: { type: 'boolean', default: false },
  },
})
const AIM_MS = 50
const FOUND = 'tests/worst/found.json'
const MOST_SHOWN = 160
const MOST_KEPT = 1
/** What is longer is made anew each time, see `extremes.ts`. */
const LONGEST_KEPT = 20_000
const seed = Number(values.seed ?? Date.now() % 2 ** 31)
const print = (line: string) => process.stdout.write(`${line}\n`)
const ms = (value: number) => value.toFixed(value < 10 ? 2 : 1).padStart(9)
const found = JSON.parse(readFileSync(FOUND, 'utf8')) as Record<string, string[]>

print(`CPU time of one input from text to text, ms; seed ${seed}`)
print('operation            tried  example    worst  dearest refusal')
let over = 0
for (const operation of operations) {
  const { name } = operation
  if (values.operation && !values.operation.includes(name)) continue
  const effort = { drawn: Number(values.drawn), changes: Number(values.changes), seed }
  const worst = worstOf(operation, effort, found[name])
  const { tried, exampleMs, answered, refused } = worst
  print(
    `${name.padEnd(18)}${String(tried).padStart(8)}${ms(exampleMs)}${ms(answered.ms)}${ms(refused.ms)}`,
  )
  print(`    ${answered.text.slice(0, MOST_SHOWN)}`)
  if (refused.ms > AIM_MS) print(`    refused: ${refused.text.slice(0, MOST_SHOWN)}`)
  if (Math.max(answered.ms, refused.ms) > AIM_MS) over += 1
  if (!values.keep || answered.text.length > LONGEST_KEPT) continue
  found[name] = [...new Set([answered.text, ...(found[name] ?? [])])].slice(0, MOST_KEPT)
  writeFileSync(FOUND, `${JSON.stringify(found, null, 2)}\n`)
}
print(`\n${over} operations above ${AIM_MS} ms`)
