import type { MiddlewareHandler } from 'hono'

/** Headers that browsers heed over TLS alone, and complain of where they come without. */
const NEED_TLS = ['Cross-Origin-Opener-Policy', 'Origin-Agent-Cluster']

/** Over TLS, or to this machine itself, which browsers trust as much. */
const TRUSTED = /^(?:https:|http:\/\/(?:localhost|127\.[\d.]+|\[::1\])(?:[:/]|$))/u

/** Takes them off answers over plain http to the shop's network; a proxy in front says how it was asked. */
export const plainHttp: MiddlewareHandler = async (context, next) => {
  await next()
  const { req, res } = context
  if (TRUSTED.test(req.url) || req.header('x-forwarded-proto') === 'https') return
  for (const name of NEED_TLS) res.headers.delete(name)
}
