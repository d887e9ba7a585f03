import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type ServerType, serve } from '@hono/node-server'
import autocannon from 'autocannon'
import { build } from 'esbuild'
import { createApp } from '../../worker/app.ts'
import bareRoute from './bare-route.ts'

const CONNECTIONS = 20
const SECONDS = 4
const BODY = JSON.stringify({ refrigerant: 'R-134a', pressure: '32 psig' })

export interface Throughput {
  readonly runtime: 'workerd' | 'node-server'
  readonly app: 'chargewright' | 'bare zod route'
  readonly requestsPerSecond: number
}

/** Requests per second of `POST /v1/saturation` and of a bare validated route, on both runtimes. */
export async function httpBench(): Promise<readonly Throughput[]> {
  const apps = { chargewright: createApp(), 'bare zod route': bareRoute } as const
  const rows: Throughput[] = []
  for (const [app, handler] of Object.entries(apps)) {
    const port = await freePort()
    const server = serve({ fetch: handler.fetch, port, hostname: '127.0.0.1' })
    rows.push({
      runtime: 'node-server',
      app: app as Throughput['app'],
      requestsPerSecond: await load(port),
    })
    await close(server)
  }
  const entries = { chargewright: 'worker/index.ts', 'bare zod route': 'tests/bench/bare-route.ts' }
  for (const [app, entry] of Object.entries(entries)) {
    rows.push({
      runtime: 'workerd',
      app: app as Throughput['app'],
      requestsPerSecond: await onWorkerd(entry),
    })
  }
  return rows
}

async function load(port: number): Promise<number> {
  const options = {
    url: `http://127.0.0.1:${port}/v1/saturation`,
    method: 'POST' as const,
    headers: { 'content-type': 'application/json' },
    body: BODY,
    connections: CONNECTIONS,
  }
  await autocannon({ ...options, duration: 1 })
  const result = await autocannon({ ...options, duration: SECONDS })
  if (result.non2xx > 0 || result.errors > 0) {
    throw new Error(`${result.non2xx} answers were no success, ${result.errors} failed.`)
  }
  return result.requests.average
}

/** The bundle in a bare workerd, without the development server in front. */
async function onWorkerd(entry: string): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'chargewright-bench-'))
  const port = await freePort()
  await build({
    entryPoints: [entry],
    bundle: true,
    format: 'esm',
    minify: true,
    conditions: ['workerd', 'worker'],
    outfile: join(folder, 'app.mjs'),
    logLevel: 'error',
  })
  writeFileSync(
    join(folder, 'bench.capnp'),
    `using Workerd = import "/workerd/workerd.capnp";
const config :Workerd.Config = (
  services = [(name = "main", worker = (
    modules = [(name = "app.mjs", esModule = embed "app.mjs")],
    compatibilityDate = "2026-06-01",
  ))],
  sockets = [(name = "http", address = "127.0.0.1:${port}", http = (), service = "main")],
);
`,
  )
  // Without type declarations of its own, so it is required and not imported.
  const { default: workerd } = createRequire(import.meta.url)('workerd') as { default: string }
  const child = spawn(workerd, ['serve', join(folder, 'bench.capnp')], { stdio: 'inherit' })
  try {
    await answers(port, child)
    return await load(port)
  } finally {
    child.kill('SIGKILL')
    rmSync(folder, { recursive: true })
  }
}

async function answers(port: number, child: ChildProcess): Promise<void> {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    if (child.exitCode !== null) throw new Error(`workerd ended with ${child.exitCode}.`)
    try {
      await fetch(`http://127.0.0.1:${port}/`)
      return
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
  }
  throw new Error('workerd did not answer within ten seconds.')
}

const close = (server: ServerType) =>
  new Promise<void>((resolve) => {
    server.close(() => resolve())
  })

const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() =>
        address !== null && typeof address === 'object'
          ? resolve(address.port)
          : reject(new Error('no free port')),
      )
    })
  })
