import { readFileSync } from 'node:fs'
import { createSecureContext } from 'node:tls'
import { originsOf } from '../origins.ts'
import { STOP_WITHIN_S } from './limits.ts'

/** What may be set on a server, as it is typed: by an option, else by the environment. */
export interface Given {
  readonly host?: string | undefined
  readonly port?: string | undefined
  readonly cors?: string | undefined
  readonly tlsCert?: string | undefined
  readonly tlsKey?: string | undefined
  readonly stopWithin?: string | undefined
}

/** The environment variable of each setting. */
export const VARIABLES = {
  host: 'HOST',
  port: 'PORT',
  cors: 'CORS_ORIGINS',
  tlsCert: 'TLS_CERT',
  tlsKey: 'TLS_KEY',
  stopWithin: 'STOP_WITHIN',
} as const satisfies Record<keyof Given, string>

export interface Tls {
  readonly cert: Buffer
  readonly key: Buffer
}

export interface ServerSettings {
  /** Address to listen on; a loopback address keeps the service to this machine. */
  readonly host: string
  /** Port, 0 for any that is free. */
  readonly port: number
  /** Origins that may call from web pages, with commas. */
  readonly cors: string
  /** Reads certificate and key anew, for a certificate that was renewed; none where TLS is not asked for. */
  readonly tls: (() => Tls) | undefined
  /** How long open requests may take once the server is told to end, s. */
  readonly stopWithinS: number
}

/** A setting that cannot be, with what would do. */
export class SettingError extends Error {
  override readonly name = 'SettingError' as const
  readonly hint: string

  constructor(message: string, hint: string) {
    super(message)
    this.hint = hint
  }
}

/**
 * Settings from options and environment; all of them are tried here, so that a server that starts can serve.
 *
 * @throws {SettingError} for one that cannot be.
 */
export function serverSettings(
  given: Given,
  environment: Readonly<Record<string, string | undefined>>,
): ServerSettings {
  const set = (name: keyof Given) => given[name] ?? (environment[VARIABLES[name]] || undefined)
  return {
    host: set('host') ?? '127.0.0.1',
    port: portOf(set('port') ?? '8787'),
    cors: corsOf(set('cors') ?? ''),
    tls: tlsOf(set('tlsCert'), set('tlsKey')),
    stopWithinS: secondsOf(set('stopWithin') ?? String(STOP_WITHIN_S)),
  }
}

function portOf(text: string): number {
  const port = /^\d{1,5}$/u.test(text) ? Number(text) : Number.NaN
  if (port <= 65535) return port
  throw new SettingError(`"${text}" is no port.`, 'A port is a number from 0 to 65535.')
}

function secondsOf(text: string): number {
  const seconds = /^\d{1,4}$/u.test(text) ? Number(text) : Number.NaN
  if (seconds <= 3600) return seconds
  throw new SettingError(`"${text}" is no time to end within.`, 'Give whole seconds, 0 to 3600.')
}

function corsOf(text: string): string {
  try {
    return originsOf(text).join(',')
  } catch (error) {
    throw new SettingError(
      error instanceof Error ? error.message : String(error),
      'An origin is scheme, host and port, with commas between several: https://shop.example,https://yard.example:8443.',
    )
  }
}

function tlsOf(cert: string | undefined, key: string | undefined): (() => Tls) | undefined {
  if (cert === undefined && key === undefined) return undefined
  if (cert === undefined || key === undefined) {
    const missing = cert === undefined ? 'the certificate (--tls-cert)' : 'the key (--tls-key)'
    throw new SettingError(`For TLS ${missing} is missing.`, 'Give both, as PEM files.')
  }
  const read = () => readTls(cert, key)
  read()
  return read
}

/** @throws {SettingError} for a file that cannot be read, or a pair that does not belong together. */
function readTls(certPath: string, keyPath: string): Tls {
  const pair = { cert: readPem(certPath), key: readPem(keyPath) }
  try {
    createSecureContext(pair)
    return pair
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new SettingError(
      `${certPath} and ${keyPath} are no certificate with its key (${reason}).`,
      'Both are PEM files; the certificate comes first in its file, the chain behind it.',
    )
  }
}

function readPem(path: string): Buffer {
  try {
    return readFileSync(path)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unreadable'
    throw new SettingError(
      `The file ${path} cannot be read (${code}).`,
      'The user that runs the server must be allowed to read it.',
    )
  }
}
