import { parseArgs } from 'node:util'
import fc from 'fast-check'
import { createApp } from '../../worker/app.ts'
import { type BenchServer, onNode, onWorkerd } from '../bench/servers.ts'
import { type Heard, judge } from './judge.ts'
import { type Asked, type Document, requestsOf } from './requests.ts'

/**
 * Asks both servers what the OpenAPI document allows and some that it does not, and holds each answer
 * against it: `npm run fuzz -- --requests 100000 --seed 1`. The times are printed, and judged by nobody.
 */
const { values } = parseArgs({
  options: { requests: { type: 'string', default: '100000' }, seed: { type: 'string' } },
})
const requests = Number(values.requests)
const seed = Number(values.seed ?? Date.now() % 2 ** 31)
const AT_ONCE = 8
const MOST_SHOWN = 10

const print = (line: string) => process.stdout.write(`${line}\n`)
const document = (await (await createApp().request('/openapi.json')).json()) as Document
const addresses = requestsOf(document)
const problemWith = judge(document)
const each = Math.ceil(requests / addresses.length / 2)
const failures: string[] = []

interface Slowest {
  readonly ms: number
  readonly asked: Asked | undefined
}

async function hear({ url }: BenchServer, { method, address, type, body }: Asked): Promise<Heard> {
  const response = await fetch(url + address, {
    method: method.toUpperCase(),
    ...(type === undefined ? {} : { headers: { 'content-type': type } }),
    ...(body === undefined ? {} : { body }),
  })
  return {
    status: response.status,
    type: response.headers.get('content-type') ?? '',
    text: await response.text(),
  }
}

async function fuzz(name: string, server: BenchServer): Promise<void> {
  print(`\n${name}: ${each} requests at each of ${addresses.length} addresses, seed ${seed}`)
  for (const [address, arbitrary] of addresses) {
    const asked = fc.sample(arbitrary, { numRuns: each, seed })
    const times: number[] = []
    let slowest: Slowest = { ms: 0, asked: undefined }
    let answered = 0
    const next = asked.values()
    const one = async () => {
      for (const question of next) {
        const start = performance.now()
        const heard = await hear(server, question)
        const ms = performance.now() - start
        times.push(ms)
        if (ms > slowest.ms) slowest = { ms, asked: question }
        if (heard.status === 200) answered += 1
        const problem = problemWith(question, heard)
        if (problem !== undefined) {
          failures.push(
            `${name} ${address}: ${problem}\n    ${question.address} ${question.body ?? ''}`,
          )
        }
      }
    }
    await Promise.all(Array.from({ length: AT_ONCE }, one))
    const middle = times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0
    print(
      `  ${address.padEnd(40)} ${String(answered).padStart(6)} answered, median ${middle.toFixed(1)} ms, longest ${slowest.ms.toFixed(0)} ms`,
    )
    if (slowest.ms > 500)
      print(`    ${slowest.asked?.body?.slice(0, 400) ?? slowest.asked?.address}`)
  }
}

for (const [name, start] of [
  ['Node', () => onNode('chargewright')],
  ['workerd', () => onWorkerd('worker/index.ts')],
] as const) {
  const server = await start()
  try {
    await fuzz(name, server)
  } finally {
    server.end()
  }
}
for (const failure of failures.slice(0, MOST_SHOWN)) print(`\nFAILED ${failure}`)
print(`\n${each * addresses.length * 2} requests, ${failures.length} failed, seed ${seed}`)
process.exit(failures.length === 0 ? 0 : 1)
