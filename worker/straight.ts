import { keptWith } from '../shared/kept.ts'
import type { Operation } from '../shared/operation.ts'
import { answerBody } from './answer-body.ts'
import { limitedAt } from './guards.ts'
import { problemOf } from './problem.ts'
import { EVERY_ANSWER, type Headers as Fixed, JSON_TYPE, NOT_KEPT } from './reply.ts'
import { BODY_LIMIT, type Settings } from './settings.ts'
import { askedOf, type SaturationQuery, saturationQuery } from './straight-query.ts'
import { ASK_AGAIN, addressOf, isKnown, tagOf } from './tags.ts'

/** What is looked at of a request: of the platform's own, or of Node's without making one of it. */
export interface Asked {
  readonly method: string
  readonly url: string
  readonly headers: { get(name: string): string | null }
}

/**
 * What an answer to a request has for headers, by what it usually has; nothing where something must go
 * around the answer.
 */
export type HeadersOf = (request: Asked, usual: Fixed) => Fixed | undefined

/** How such a request is answered. */
export interface Straight {
  /** All headers of the answer but for the tag. */
  readonly headers: Fixed
  /** Of one by address: names the answer. */
  readonly tag?: string
  /** Whether whoever asks has that answer. */
  readonly isKnown?: boolean
  /** By the text of the body; without it for one by address. @throws {CalcError} */
  answer(body?: string): string
}

/** Headers of an answer to POST, and of one to GET but for its tag: all of them, made once. */
const ANSWERED: Fixed = { ...NOT_KEPT, 'Content-Type': JSON_TYPE }
const KEPT: Fixed = { ...EVERY_ANSWER, 'Content-Type': JSON_TYPE, 'Cache-Control': ASK_AGAIN }

/**
 * The way of nearly every request that there is: one plain JSON input to one operation, or saturation by a query.
 *
 * It needs no router, no page files and no compression, which together took longer than the
 * calculation. Whatever is not surely such a request goes the app's way, which answers it the same or refuses it.
 */
export function straightTo(
  operations: readonly Operation[],
  headersOf: HeadersOf = (_, usual) => usual,
): (asked: Asked, settings: Settings | undefined) => Straight | undefined {
  // one that takes long goes by the routes, where others have their turn meanwhile
  const quick = operations.filter(({ unshownInPieces }) => unshownInPieces === undefined)
  const byPath = new Map(quick.map((operation) => [`/v1/${operation.name}`, operation]))
  const saturation = byPath.get('/v1/saturation')
  let byQuery: SaturationQuery | undefined
  return (request, settings) => {
    if ((settings?.CORS_ORIGINS ?? '') !== '') return undefined
    const address = addressOf(request.url)
    if (request.method === 'POST') {
      const operation = byPath.get(address)
      const headers = operation && isPlain(request) && headersOf(request, ANSWERED)
      if (!operation || !headers) return undefined
      return { headers, answer: (body = '') => answerBody(operation, body) }
    }
    if (request.method !== 'GET' || !saturation) return undefined
    const asked = askedOf(address)
    const headers = asked && headersOf(request, KEPT)
    if (!headers) return undefined
    byQuery ??= saturationQuery(saturation)
    const { answer } = byQuery
    const tag = tagOf(request, settings)
    const known = isKnown(request.headers.get('if-none-match'), tag)
    return { headers, tag, isKnown: known, answer: () => answer(...asked) }
  }
}

/** The same for requests of the platform's own. */
export function straightWay(
  operations: readonly Operation[],
  headersOf?: HeadersOf,
): (request: Request, settings: Settings | undefined) => Promise<Response> | undefined {
  const straight = straightTo(operations, headersOf)
  return (request, settings) => {
    const to = straight(request, settings)
    return to && responseOf(to, request, settings)
  }
}

async function responseOf(
  { headers, tag, isKnown, answer }: Straight,
  request: Request,
  settings: Settings | undefined,
): Promise<Response> {
  try {
    const refusal = settings?.RATE_LIMITER && (await limitedAt(settings.RATE_LIMITER, request))
    if (refusal) return refusal
    if (tag === undefined) {
      return new Response(answer(await request.text()), { headers: made(headers) })
    }
    if (isKnown) return new Response(null, { status: 304, headers: unchanged(headers, tag) })
    const response = new Response(answer(), { headers: made(headers) })
    response.headers.set('ETag', tag)
    return response
  } catch (error) {
    return problemOf(request, error)
  }
}

/** Headers as the platform has them, made once: it copies its own at a fraction of what reading ours costs. */
const made = keptWith((headers: Fixed) => new Headers(headers))

/** Headers of an answer that whoever asks has already. */
export function unchanged({ 'Content-Type': _, ...headers }: Fixed, tag: string): Fixed {
  return { ...headers, ETag: tag }
}

/** A JSON body of a told length that fits, as it is. */
function isPlain({ headers }: Asked): boolean {
  const length = headers.get('content-length')
  return (
    headers.get('content-type') === JSON_TYPE &&
    length !== null &&
    Number(length) <= BODY_LIMIT &&
    headers.get('content-encoding') === null &&
    headers.get('transfer-encoding') === null
  )
}
