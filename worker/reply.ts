import type { ContentfulStatusCode } from 'hono/utils/http-status'
import { ABOUT } from '../shared/about.ts'
import { jsonText } from '../shared/visible.ts'

export type Headers = Readonly<Record<string, string>>

export const VERSION_HEADER = 'X-Chargewright-Version'

/**
 * Headers of every answer and every file of the page: who speaks, and for browsers that nothing is
 * loaded from elsewhere, written into a page, or framed.
 *
 * One object and not a middleware: setting a dozen headers on each answer cost as much as finding
 * its route. Strict transport security is left to whoever ends TLS, who decides it for their host.
 */
export const EVERY_ANSWER: Headers = {
  [VERSION_HEADER]: ABOUT.version,
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Origin-Agent-Cluster': '?1',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-DNS-Prefetch-Control': 'off',
  'X-Frame-Options': 'DENY',
}

export const JSON_TYPE = 'application/json' as const
/** A JSON value a line; it has no registered name, and this is the one that is met most. */
export const LINES_TYPE = 'application/x-ndjson' as const
export const HTML_TYPE = 'text/html; charset=utf-8'

/** Nobody keeps it: it answers a question that was asked by body, or it says that there is no answer. */
export const NOT_KEPT: Headers = { ...EVERY_ANSWER, 'Cache-Control': 'no-store' }

/** An answer of a type; its cache rules are those of its address unless it brings its own. */
export const reply = (
  body: string | ReadableStream<Uint8Array>,
  type: string,
  headers: Headers = EVERY_ANSWER,
  status: ContentfulStatusCode = 200,
): Response => new Response(body, { status, headers: { ...headers, 'Content-Type': type } })

export const jsonReply = (value: unknown): Response => reply(jsonText(value), JSON_TYPE)

/** An answer without a body. */
export const emptyReply = (status: 204 | 304, headers: Headers): Response =>
  new Response(null, { status, headers: { ...EVERY_ANSWER, ...headers } })
