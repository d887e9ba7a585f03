import type { Operation } from '../shared/operation.ts'
import { answerBody } from './answer-body.ts'
import { limitedAt } from './guards.ts'
import { problemOf } from './problem.ts'
import { EVERY_ANSWER, type Headers as Fixed, JSON_TYPE, NOT_KEPT } from './reply.ts'
import { BODY_LIMIT, type Settings } from './settings.ts'
import { askedOf, type SaturationQuery, saturationQuery } from './straight-query.ts'
import { ASK_AGAIN, isKnown, tagOf } from './tags.ts'

/**
 * What an answer to a request has for headers, by what it usually has; nothing where something must go
 * around the answer.
 */
export type HeadersOf = (request: Request, usual: Fixed) => Fixed | undefined

/** Headers of an answer to POST, and of one to GET but for its tag: all of them, made once. */
const ANSWERED: Fixed = { ...NOT_KEPT, 'Content-Type': JSON_TYPE }
const KEPT: Fixed = { ...EVERY_ANSWER, 'Content-Type': JSON_TYPE, 'Cache-Control': ASK_AGAIN }

type Way = (request: Request, settings: Settings | undefined) => Promise<Response> | undefined

/**
 * The way of nearly every request that there is: one plain JSON input to one operation, or saturation by a query.
 *
 * It needs no router, no page files and no compression, which together took longer than the
 * calculation. Whatever is not surely such a request goes the app's way, which answers it the same or refuses it.
 */
export function straightWay(
  operations: readonly Operation[],
  headersOf: HeadersOf = (_, usual) => usual,
): Way {
  const byPath = new Map(operations.map((operation) => [`/v1/${operation.name}`, operation]))
  const saturation = byPath.get('/v1/saturation')
  let byQuery: SaturationQuery | undefined
  return (request, settings) => {
    if ((settings?.CORS_ORIGINS ?? '') !== '') return undefined
    const address = addressOf(request.url)
    if (request.method === 'POST') {
      const operation = byPath.get(address)
      const headers = operation && isPlain(request) && headersOf(request, ANSWERED)
      return operation && headers ? toBody(operation, request, settings, headers) : undefined
    }
    if (request.method !== 'GET' || !saturation) return undefined
    const asked = askedOf(address)
    const headers = asked && headersOf(request, KEPT)
    if (!headers) return undefined
    byQuery ??= saturationQuery(saturation)
    return toQuery(byQuery, asked, request, settings, headers)
  }
}

async function toBody(
  operation: Operation,
  request: Request,
  settings: Settings | undefined,
  headers: Fixed,
): Promise<Response> {
  try {
    const refusal = settings?.RATE_LIMITER && (await limitedAt(settings.RATE_LIMITER, request))
    return refusal ?? new Response(answerBody(operation, await request.text()), { headers })
  } catch (error) {
    return problemOf(request, error)
  }
}

async function toQuery(
  byQuery: SaturationQuery,
  asked: Parameters<SaturationQuery['answer']>,
  request: Request,
  settings: Settings | undefined,
  headers: Fixed,
): Promise<Response> {
  try {
    const refusal = settings?.RATE_LIMITER && (await limitedAt(settings.RATE_LIMITER, request))
    if (refusal) return refusal
    const ETag = tagOf(request, settings)
    if (isKnown(request.headers.get('if-none-match'), ETag)) return unchanged(headers, ETag)
    return new Response(byQuery.answer(...asked), { headers: { ...headers, ETag } })
  } catch (error) {
    return problemOf(request, error)
  }
}

const addressOf = (url: string) => url.slice(url.indexOf('/', 'https://'.length))

function unchanged({ 'Content-Type': _, ...headers }: Fixed, ETag: string): Response {
  return new Response(null, { status: 304, headers: { ...headers, ETag } })
}

/** A JSON body of a told length that fits, as it is. */
function isPlain({ headers }: Request): boolean {
  const length = headers.get('content-length')
  return (
    headers.get('content-type') === JSON_TYPE &&
    length !== null &&
    Number(length) <= BODY_LIMIT &&
    headers.get('content-encoding') === null &&
    headers.get('transfer-encoding') === null
  )
}
