import { type ServerType, serve } from '@hono/node-server'
import { createApp } from './app.ts'
import type { Settings } from './settings.ts'

export interface StartOptions {
  /** Address to listen on; a loopback address keeps the service to this machine. */
  readonly host: string
  /** Port, 0 for any that is free. */
  readonly port: number
  /** Origins that may call from web pages, with commas; none where left out. */
  readonly cors?: string | undefined
}

export interface RunningServer {
  readonly url: string
  /** Takes no new requests and ends when the open ones are answered. */
  stop(): Promise<void>
}

/**
 * Serves the app by Node's own HTTP server; ends on SIGINT and SIGTERM.
 *
 * @throws {Error} that says in words why nothing can listen there.
 */
export async function start({ host, port, cors }: StartOptions): Promise<RunningServer> {
  const app = createApp()
  const settings: Settings = cors === undefined ? {} : { CORS_ORIGINS: cors }
  const server = await listening(host, port, (request) => app.fetch(request, settings))
  const address = server.address()
  const actualPort = typeof address === 'object' && address !== null ? address.port : port
  const stop = () =>
    new Promise<void>((resolve, reject) => {
      server.close((error) => (error ? reject(error) : resolve()))
    })
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop())
  return { url: `http://${host.includes(':') ? `[${host}]` : host}:${actualPort}`, stop }
}

const REASONS: Readonly<Record<string, string>> = {
  EADDRINUSE: 'something listens there already',
  EADDRNOTAVAIL: 'this machine has no such address',
  EACCES: 'this user may not use that port',
  ENOTFOUND: 'there is no such address',
  EAI_AGAIN: 'there is no such address',
}

function listening(
  hostname: string,
  port: number,
  fetch: (request: Request) => Response | Promise<Response>,
): Promise<ServerType> {
  return new Promise((resolve, reject) => {
    const server = serve({ fetch, hostname, port }, () => resolve(server))
    server.once('error', (error: NodeJS.ErrnoException) => {
      const reason = REASONS[error.code ?? ''] ?? error.message
      reject(new Error(`Nothing can listen at ${hostname}, port ${port}: ${reason}.`))
    })
  })
}
