import type { Context, MiddlewareHandler } from 'hono'
import { ABOUT } from '../shared/about.ts'
import { emptyReply } from './reply.ts'
import type { Environment, Settings } from './settings.ts'

/**
 * Whoever keeps an answer asks before using it again: an answer never outlives an upgrade, and a
 * question whose answer is still good costs no calculation.
 */
export const ASK_AGAIN = 'public, no-cache'

/**
 * Answers to GET depend on nothing but the address, the form that is asked for, and the version that
 * runs; so their tag is made of these, before there is an answer and without reading it.
 */
export const tagged = (): MiddlewareHandler<Environment> => async (context, next) => {
  const { method } = context.req
  if (method !== 'GET' && method !== 'HEAD') return next()
  const form = variesByForm(context) ? (context.req.header('accept') ?? '') : ''
  const tag = tagOf(context.req.raw, context.env, form)
  const headers = { ETag: tag, 'Cache-Control': ASK_AGAIN, ...(variesByForm(context) && VARY) }
  if (isKnown(context.req.header('if-none-match') ?? null, tag)) return emptyReply(304, headers)
  await next()
  // What brings its own rule keeps it: a state of the service is nobody's to keep.
  if (!context.res.ok || context.res.headers.has('Cache-Control')) return
  context.res.headers.set('ETag', tag)
  context.res.headers.set('Cache-Control', ASK_AGAIN)
  if (variesByForm(context)) context.res.headers.append('Vary', VARY.Vary)
}

const VARY = { Vary: 'Accept' } as const

/** Where the form of an answer goes by what the caller accepts. */
const variesByForm = ({ req }: Context) => req.path === '/v1/table'

/** Path and query of a URL, as they came. */
export const addressOf = (url: string): string => url.slice(url.indexOf('/', 'https://'.length))

/** Weak, since a compressed answer has the same tag as a plain one. */
export function tagOf(
  { url }: { readonly url: string },
  settings: Settings | undefined,
  form = '',
): string {
  const asked = `${addressOf(url)} ${form}`
  const build = settings?.BUILD ?? settings?.CF_VERSION_METADATA?.id ?? ''
  return `W/"${ABOUT.version}-${fingerprint(build + asked)}"`
}

/** Only a tag that we gave can match: `*` asks whether there is anything, which only the answer tells. */
export const isKnown = (given: string | null, tag: string): boolean =>
  given?.split(',').some((entry) => entry.trim() === tag) ?? false

/** FNV-1a (http://www.isthe.com/chongo/tech/comp/fnv/), 32 bits: tells the tags of one address apart. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  }
  return (hash >>> 0).toString(16).padStart(8, '0')
}
