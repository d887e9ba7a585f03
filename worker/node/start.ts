import type { Server } from 'node:https'
import { getRequestListener } from '@hono/node-server'
import { keptWith } from '../../shared/kept.ts'
import { operations } from '../../shared/operations.ts'
import { createApp } from '../app.ts'
import { doorProblem } from '../problem.ts'
import { type Headers, NOT_KEPT } from '../reply.ts'
import type { Settings } from '../settings.ts'
import { type HeadersOf, straightTo } from '../straight.ts'
import { compressed } from './compressed.ts'
import { listening } from './listen.ts'
import { requestLog } from './log.ts'
import { packedOnce, SAME_FOR_ALL } from './packed-once.ts'
import { pageFiles } from './page-files.ts'
import { isTrusted, plainHttp, withoutTls } from './plain-http.ts'
import { type Given, serverSettings, type Tls } from './settings.ts'
import { stopServer } from './stop.ts'
import { straightOnNode } from './straight.ts'

export type { Given } from './settings.ts'

export interface RunningServer {
  readonly url: string
  /** Takes no new requests and ends when the open ones are answered, or when their time is over. */
  stop(): Promise<void>
}

/**
 * Serves the app by Node's own HTTP server; ends on SIGINT and SIGTERM, reads a renewed certificate on SIGHUP.
 *
 * @param write - Where lines of the log go.
 * @throws {SettingError} that says in words what cannot be.
 */
export async function start(
  given: Given,
  write: (text: string) => void = (text) => void process.stderr.write(text),
): Promise<RunningServer> {
  const settings = serverSettings(given, process.env)
  const around = [plainHttp, compressed(), packedOnce(), pageFiles()]
  const app = createApp({ around, headersOf })
  // It takes most of a second to make, in which nobody else would be answered.
  await app.request(SAME_FOR_ALL, { headers: { 'accept-encoding': 'gzip' } })
  // Told apart by their start: what a caller kept from the last run may be of an older version.
  const bindings: Settings = { CORS_ORIGINS: settings.cors, BUILD: Date.now().toString(36) }
  const answer = getRequestListener((request) => app.fetch(request, bindings), {
    errorHandler: () => doorProblem('bad-request', 'The address or the host is none.'),
  })
  const isStraight = straightOnNode(straightTo(operations, headersOf), bindings, headersOf)
  const log = requestLog(write)
  // Whoever read the log went away; the service goes on.
  process.stderr.on('error', () => {})
  const server = await listening(settings, (request, response) => {
    log.follow(request, response)
    if (!isStraight(request, response)) void answer(request, response)
  })
  const stop = onSignals(async () => {
    const cut = await stopServer(server, settings.stopWithinS)
    log.flush()
    if (cut > 0) write(`ended; ${cut} connections were cut after ${settings.stopWithinS} s\n`)
  })
  const { tls } = settings
  if (tls) process.on('SIGHUP', () => renew(server as Server, tls, write))
  const address = server.address()
  const port = typeof address === 'object' && address !== null ? address.port : settings.port
  const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host
  return { url: `${tls ? 'https' : 'http'}://${host}:${port}`, stop }
}

/** Of answers that are not compressed; the others have something around them. */
const headersOf: HeadersOf = (request, usual) => {
  if (request.headers.get('accept-encoding') !== null) return undefined
  return (isTrusted(request) ? trusted : untrusted)(usual)
}

/** What may be kept says that it might be compressed, see {@link compressed}. */
const trusted = keptWith((usual: Headers) =>
  usual['Cache-Control'] === NOT_KEPT['Cache-Control']
    ? usual
    : { ...usual, Vary: 'Accept-Encoding' },
)
const untrusted = keptWith((usual: Headers) => withoutTls(trusted(usual)))

/** A second signal ends the process at once, as it does by itself. */
function onSignals(end: () => Promise<void>): () => Promise<void> {
  let ending: Promise<void> | undefined
  const stop = () => {
    ending ??= end()
    return ending
  }
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop())
  return stop
}

/** The certificate that is there goes on until a better one can be read. */
function renew(server: Server, tls: () => Tls, write: (text: string) => void): void {
  try {
    server.setSecureContext(tls())
    write('the certificate is read anew\n')
  } catch (error) {
    write(`the certificate stays: ${error instanceof Error ? error.message : String(error)}\n`)
  }
}
