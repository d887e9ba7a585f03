import { createServer, type RequestListener, type Server, type ServerOptions } from 'node:http'
import { createServer as createTlsServer } from 'node:https'
import type { Duplex } from 'node:stream'
import { type DoorProblem, doorProblem } from '../problem.ts'
import * as limits from './limits.ts'
import { type ServerSettings, SettingError } from './settings.ts'

const OPTIONS: ServerOptions = {
  headersTimeout: limits.HEADERS_TIMEOUT_MS,
  requestTimeout: limits.REQUEST_TIMEOUT_MS,
  connectionsCheckingInterval: limits.CHECK_EVERY_MS,
  keepAliveTimeout: limits.KEEP_ALIVE_MS,
  maxHeaderSize: limits.MOST_HEADER_BYTES,
}

const REASONS: Readonly<Record<string, string>> = {
  EADDRINUSE: 'something listens there already',
  EADDRNOTAVAIL: 'this machine has no such address',
  EACCES: 'this user may not use that port',
  ENOTFOUND: 'there is no such address',
  EAI_AGAIN: 'there is no such address',
}

/** A server of Node's own that listens, with the limits of this folder. @throws {SettingError} where none can. */
export async function listening(
  { host, port, tls }: ServerSettings,
  answer: RequestListener,
): Promise<Server> {
  const server = tls
    ? createTlsServer({ ...OPTIONS, ...tls() }, answer)
    : createServer(OPTIONS, answer)
  server.maxConnections = limits.MOST_CONNECTIONS
  server.timeout = limits.IDLE_TIMEOUT_MS
  server.on('clientError', refuse)
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const reason = REASONS[error.code ?? ''] ?? error.message
      reject(
        new SettingError(
          `Nothing can listen at ${host}, port ${port}: ${reason}.`,
          'Give another --port (0 takes any that is free) or an address of this machine as --host.',
        ),
      )
    })
    server.listen(port, host, resolve)
  })
  return server
}

const PROBLEMS: Readonly<Record<string, readonly [DoorProblem, string]>> = {
  ERR_HTTP_REQUEST_TIMEOUT: [
    'request-timeout',
    `Headers may take ${limits.HEADERS_TIMEOUT_MS / 1e3} s, the whole request ${limits.REQUEST_TIMEOUT_MS / 1e3} s.`,
  ],
  HPE_HEADER_OVERFLOW: [
    'headers-too-large',
    `All headers together take at most ${limits.MOST_HEADER_BYTES} bytes.`,
  ],
}

/** What Node refuses before there is a request gets problem details like any other refusal. */
function refuse(error: NodeJS.ErrnoException, socket: Duplex): void {
  if (!socket.writable || error.code === 'ECONNRESET') {
    socket.destroy()
    return
  }
  const [code, detail] = PROBLEMS[error.code ?? ''] ?? ['bad-request', 'This is no HTTP request.']
  const response = doorProblem(code, detail)
  void response.text().then((body) => {
    const headers = [...response.headers].map(([name, value]) => `${name}: ${value}\r\n`).join('')
    const length = `content-length: ${Buffer.byteLength(body)}\r\n`
    socket.end(
      `HTTP/1.1 ${response.status} ${code}\r\nconnection: close\r\n${headers}${length}\r\n${body}`,
    )
  })
}
