import type { MiddlewareHandler } from 'hono'
import { cors } from 'hono/cors'
import { secureHeaders } from 'hono/secure-headers'
import { doorProblem } from './problem.ts'
import type { Environment } from './settings.ts'

/** Pages load nothing from elsewhere and cannot be framed. */
export const securityHeaders = (): MiddlewareHandler =>
  secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'"],
      baseUri: ["'none'"],
      formAction: ["'none'"],
      frameAncestors: ["'none'"],
    },
    referrerPolicy: 'no-referrer',
    xFrameOptions: 'DENY',
    // Whoever ends TLS in front of this service decides that, for all of their host.
    strictTransportSecurity: false,
  })

const allowedOrigins = (setting: string | undefined) =>
  (setting ?? '').split(',').flatMap((origin) => (origin.trim() === '' ? [] : [origin.trim()]))

/** Lets web pages of the set origins call the API; none where none are set. */
export function crossOrigin(): MiddlewareHandler<Environment> {
  const handler = cors({
    origin: (origin, context) => {
      const allowed = allowedOrigins(context.env?.CORS_ORIGINS)
      if (allowed.includes('*')) return '*'
      return allowed.includes(origin) ? origin : null
    },
    allowMethods: ['GET', 'HEAD', 'POST'],
    allowHeaders: ['Content-Type', 'Accept', 'If-None-Match'],
    exposeHeaders: ['ETag'],
    maxAge: 86_400,
  })
  return (context, next) =>
    allowedOrigins(context.env?.CORS_ORIGINS).length > 0 ? handler(context, next) : next()
}

/** Asks the edge's rate limiter where there is one: by caller's address, which the edge sets itself. */
export const rateLimit = (): MiddlewareHandler<Environment> => async (context, next) => {
  const limiter = context.env?.RATE_LIMITER
  const key = context.req.header('cf-connecting-ip') ?? 'unknown'
  if (limiter && !(await limiter.limit({ key })).success) {
    return doorProblem(
      context,
      'too-many-requests',
      'This address asks more often than is allowed.',
      {
        hint: 'Wait a minute, or send rows together in one work order.',
        headers: { 'Retry-After': '60' },
      },
    )
  }
  await next()
}

/** Answers that depend on nothing but the address may be kept for an hour, and asked again by their tag. */
export const cacheable = (): MiddlewareHandler => async (context, next) => {
  await next()
  const { method } = context.req
  if ((method === 'GET' || method === 'HEAD') && (context.res.ok || context.res.status === 304)) {
    context.res.headers.set('Cache-Control', 'public, max-age=3600')
  }
}
