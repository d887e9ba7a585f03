import type { MiddlewareHandler } from 'hono'
import type { Headers } from '../reply.ts'
import type { Asked } from '../straight.ts'

/** Headers that browsers heed over TLS alone, and complain of where they come without. */
const NEED_TLS = ['Cross-Origin-Opener-Policy', 'Origin-Agent-Cluster']

/** Over TLS, or to this machine itself, which browsers trust as much. */
const TRUSTED = /^(?:https:|http:\/\/(?:localhost|127\.[\d.]+|\[::1\])(?:[:/]|$))/u

/** Whether a request came as browsers trust it; a proxy in front says how it was asked. */
export const isTrusted = ({ url, headers }: Asked): boolean =>
  TRUSTED.test(url) || headers.get('x-forwarded-proto') === 'https'

/** Takes them off answers over plain http to the shop's network. */
export const plainHttp: MiddlewareHandler = async (context, next) => {
  await next()
  if (isTrusted(context.req.raw)) return
  for (const name of NEED_TLS) context.res.headers.delete(name)
}

/** Headers without those that need TLS. */
export const withoutTls = (headers: Headers): Headers =>
  Object.fromEntries(Object.entries(headers).filter(([name]) => !NEED_TLS.includes(name)))
