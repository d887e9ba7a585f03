import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'

export interface Served {
  readonly url: string
  readonly child: ChildProcess
  /** All that it wrote so far. */
  log(): string
  /** Its exit status, and how long it took to end after the signal, ms. */
  end(signal?: NodeJS.Signals): Promise<{ readonly status: number | null; readonly ms: number }>
}

/** Starts a program that serves, and waits until it says where. */
export async function served(command: string, args: readonly string[]): Promise<Served> {
  const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] })
  let text = ''
  child.stderr.on('data', (chunk) => {
    text += String(chunk)
  })
  child.stdout.on('data', () => {})
  const exited = once(child, 'exit')
  for (let tries = 0; tries < 600; tries += 1) {
    const url = /serves (https?:\S+)/u.exec(text)?.[1]
    if (url !== undefined) {
      return {
        url,
        child,
        log: () => text,
        async end(signal = 'SIGTERM') {
          const start = performance.now()
          child.kill(signal)
          const [status] = (await exited) as [number | null]
          return { status, ms: performance.now() - start }
        },
      }
    }
    if (child.exitCode !== null) break
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  child.kill('SIGKILL')
  throw new Error(`It does not serve: ${text}`)
}
