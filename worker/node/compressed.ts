import type { MiddlewareHandler } from 'hono'
import { compress } from 'hono/compress'

/**
 * Compresses answers for whoever reads compressed ones.
 *
 * An answer to POST is nobody's to keep, so where it is not compressed it need not say that it might be.
 */
export function compressed(): MiddlewareHandler {
  const handler = compress()
  return (context, next) =>
    context.req.method === 'POST' && context.req.header('accept-encoding') === undefined
      ? next()
      : handler(context, next)
}
