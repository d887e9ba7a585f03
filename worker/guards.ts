import type { MiddlewareHandler, Next } from 'hono'
import { cors } from 'hono/cors'
import { originsOf } from './origins.ts'
import { doorProblem } from './problem.ts'
import { VERSION_HEADER } from './reply.ts'
import type { Environment, Limiter } from './settings.ts'

/** Lets web pages of the set origins call the API; none where none are set. */
export function crossOrigin(): MiddlewareHandler<Environment> {
  const known = new Map<string, readonly string[]>()
  const handler = cors({
    origin: (origin, context) => {
      const allowed = allowedOrigins(known, context.env?.CORS_ORIGINS ?? '')
      if (allowed.includes('*')) return '*'
      return allowed.includes(origin) ? origin : null
    },
    allowMethods: ['GET', 'HEAD', 'POST'],
    allowHeaders: ['Content-Type', 'Accept', 'If-None-Match'],
    exposeHeaders: ['ETag', VERSION_HEADER],
    maxAge: 86_400,
  })
  return (context, next) => {
    const { CORS_ORIGINS: setting = '' } = context.env ?? {}
    return setting.trim() === '' ? next() : handler(context, next)
  }
}

/** A server refuses a wrong setting when it starts; at the edge nothing starts, so there it is told in the log. */
function allowedOrigins(known: Map<string, readonly string[]>, setting: string): readonly string[] {
  const before = known.get(setting)
  if (before) return before
  let origins: readonly string[] = []
  try {
    origins = originsOf(setting)
  } catch (error) {
    console.error(`CORS_ORIGINS: ${error instanceof Error ? error.message : String(error)}`)
  }
  known.set(setting, origins)
  return origins
}

/** Asks the edge's rate limiter where there is one: by caller's address, which the edge sets itself. */
export const rateLimit = (): MiddlewareHandler<Environment> => (context, next) => {
  const limiter = context.env?.RATE_LIMITER
  return limiter ? limited(limiter, context.req.raw, next) : next()
}

async function limited(
  limiter: Limiter,
  request: Request,
  next: Next,
): Promise<Response | undefined> {
  const refusal = await limitedAt(limiter, request)
  if (refusal) return refusal
  await next()
  return undefined
}

/** The refusal of a request whose caller asks too often; nothing where it may ask. */
export async function limitedAt(limiter: Limiter, request: Request): Promise<Response | undefined> {
  const key = request.headers.get('cf-connecting-ip') ?? 'unknown'
  return (await limiter.limit({ key })).success ? undefined : tooMany()
}

const tooMany = () =>
  doorProblem('too-many-requests', 'This address asks more often than is allowed.', {
    hint: 'Wait a minute, or send many inputs in one request: POST /v1/<operation>/batch.',
    headers: { 'Retry-After': '60' },
  })
