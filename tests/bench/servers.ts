import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'esbuild'
import type { Sent } from './bare-route.ts'

/** A server in a process of its own. */
export interface BenchServer {
  readonly url: string
  /** CPU time that it took so far, user and system, s. */
  cpuS(): number
  end(): void
}

const TICKS_PER_SECOND = 100

/** @throws {Error} where the system does not tell (only Linux has /proc). */
function cpuOf({ pid }: ChildProcess): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  return (Number(fields[11]) + Number(fields[12])) / TICKS_PER_SECOND
}

const running = (url: string, child: ChildProcess, end = () => {}): BenchServer => ({
  url,
  cpuS: () => cpuOf(child),
  end() {
    child.kill('SIGKILL')
    end()
  },
})

export async function onNode(which: 'chargewright' | 'bare', sent?: Sent): Promise<BenchServer> {
  const child = spawn(
    process.execPath,
    ['tests/bench/server.ts', which, ...(sent ? [JSON.stringify(sent)] : [])],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  )
  for await (const line of child.stdout) {
    child.stdout.resume()
    return running(String(line).trim(), child)
  }
  throw new Error('The server of the bench did not start.')
}

/** The bundle in a bare workerd, without the development server in front. */
export async function onWorkerd(entry: string, sent?: Sent): Promise<BenchServer> {
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
    ...(sent ? { banner: { js: `globalThis.SENT=${JSON.stringify(sent)};` } } : {}),
  })
  writeFileSync(join(folder, 'bench.capnp'), capnp(port))
  // Without type declarations of its own, so it is required and not imported.
  const { default: workerd } = createRequire(import.meta.url)('workerd') as { default: string }
  const child = spawn(workerd, ['serve', join(folder, 'bench.capnp')], { stdio: 'inherit' })
  const url = `http://127.0.0.1:${port}`
  await answers(url, child)
  return running(url, child, () => rmSync(folder, { recursive: true, force: true }))
}

const capnp = (port: number) => `using Workerd = import "/workerd/workerd.capnp";
const config :Workerd.Config = (
  services = [(name = "main", worker = (
    modules = [(name = "app.mjs", esModule = embed "app.mjs")],
    compatibilityDate = "2026-06-01",
  ))],
  sockets = [(name = "http", address = "127.0.0.1:${port}", http = (), service = "main")],
);
`

async function answers(url: string, child: ChildProcess): Promise<void> {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    if (child.exitCode !== null) throw new Error(`workerd ended with ${child.exitCode}.`)
    try {
      await fetch(url)
      return
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
  }
  throw new Error('workerd did not answer within ten seconds.')
}

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
