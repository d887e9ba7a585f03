import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import { createApp } from '../../worker/app.ts'
import type { Sent } from './bare-route.ts'
import { median } from './median.ts'
import { type BenchServer, onNode, onWorkerd } from './servers.ts'

const run = promisify(execFile)
const ROUNDS = 7
/** By count and not by time, so that a busy machine measures as much as an idle one. */
const REQUESTS = 4_000
/** The compiler of the runtime is done with a program after some ten thousand requests, not before. */
const WARM_UP = 20_000
const ADDRESS = '/v1/saturation'
const BY_QUERY = '/v1/refrigerants/R-134a/saturation'
/** Asked in turn, so that nothing is gained by what was asked before; as long as the one that is sent by the bare route. */
const PRESSURES = Array.from({ length: 64 }, (_, place) => `${10 + ((place * 37) % 89)} psig`)
const bodyOf = (pressure: string) => JSON.stringify({ refrigerant: 'R-134a', pressure })
const BODIES = PRESSURES.map(bodyOf)
const QUERIES = PRESSURES.map((pressure) => `?pressure=${encodeURIComponent(pressure)}`)

/** Medians over the rounds. */
export interface Throughput {
  readonly cpuMicroseconds: number
  readonly perSecond: number
}

export interface Comparison {
  readonly runtime: 'Node' | 'workerd'
  readonly ours: Throughput
  /** The same question by GET. */
  readonly query: Throughput
  readonly bare: Throughput
}

/** `POST /v1/saturation` of the service, the same by GET, and that of a bare validated route that sends the same bytes and headers. */
export async function httpBench(runtime: Comparison['runtime']): Promise<Comparison> {
  const sent = await answerOfOurs()
  const servers =
    runtime === 'Node'
      ? ([await onNode('chargewright'), await onNode('bare', sent)] as const)
      : ([
          await onWorkerd('worker/index.ts'),
          await onWorkerd('tests/bench/bare-route.ts', sent),
        ] as const)
  const [service, route] = servers
  const loads = [
    (amount: number) => load(service, amount, ADDRESS, BODIES),
    (amount: number) => load(service, amount, BY_QUERY, QUERIES),
    (amount: number) => load(route, amount, ADDRESS, BODIES),
  ]
  try {
    const rounds: Throughput[][] = loads.map(() => [])
    for (const ask of loads) await ask(WARM_UP)
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const [index, ask] of loads.entries()) rounds[index]?.push(await ask(REQUESTS))
    }
    const [ours, query, bare] = rounds.map(middle)
    if (!ours || !query || !bare) throw new Error('Nothing was measured.')
    return { runtime, ours, query, bare }
  } finally {
    for (const server of servers) server.end()
  }
}

async function answerOfOurs(): Promise<Sent> {
  const response = await createApp().request(ADDRESS, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: bodyOf('32 psig'),
  })
  return { body: await response.text(), headers: Object.fromEntries(response.headers) }
}

async function load(
  server: BenchServer,
  amount: number,
  address: string,
  questions: readonly string[],
): Promise<Throughput> {
  const before = server.cpuS()
  const { stdout } = await run(process.execPath, [
    'tests/bench/load.ts',
    server.url + address,
    JSON.stringify(questions),
    String(amount),
  ])
  const { count, perSecond } = JSON.parse(stdout) as { count: number; perSecond: number }
  return { cpuMicroseconds: ((server.cpuS() - before) / count) * 1e6, perSecond }
}

const middle = (rounds: readonly Throughput[]): Throughput => ({
  cpuMicroseconds: median(rounds.map(({ cpuMicroseconds }) => cpuMicroseconds)),
  perSecond: median(rounds.map(({ perSecond }) => perSecond)),
})
