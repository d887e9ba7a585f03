import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import type { MiddlewareHandler } from 'hono'

/** Long, asked for by every client that is made from it, and the same until the next start. */
export const SAME_FOR_ALL = '/openapi.json'

/** Gzip by name, unless with a weight of nothing (RFC 9110, 12.5.3). */
const TAKES_GZIP = /(?:^|,)\s*gzip\s*(?:;\s*q=(?!0(?:\.0*)?\s*(?:,|$))[\d.]+\s*)?(?:,|$)/iu

/** Keeps that one answer packed: packing it again for each caller would hold the others up. */
export function packedOnce(): MiddlewareHandler {
  let kept: Promise<Uint8Array<ArrayBuffer>> | undefined
  return async (context, next) => {
    await next()
    const { req, res } = context
    const asked = req.method === 'GET' && req.path === SAME_FOR_ALL && res.status === 200
    if (!asked || !TAKES_GZIP.test(req.header('accept-encoding') ?? '')) return
    kept ??= res.text().then(pack)
    const headers = new Headers(res.headers)
    headers.set('Content-Encoding', 'gzip')
    headers.append('Vary', 'Accept-Encoding')
    context.res = undefined
    context.res = new Response(await kept, { headers })
  }
}

const gzipped = promisify(gzip)
const pack = async (text: string) => new Uint8Array(await gzipped(text))
