import type { Operation } from '../shared/operation.ts'
import { answerBody } from './answer-body.ts'
import { limitedAt } from './guards.ts'
import { problemOf } from './problem.ts'
import { type Headers as Fixed, JSON_TYPE, NOT_KEPT } from './reply.ts'
import { BODY_LIMIT, type Settings } from './settings.ts'

type Told = NonNullable<ResponseInit['headers']>

/** What the answer to a request has for headers; nothing where the app has more to do with it. */
export type HeadersOf = (request: Request) => Told | undefined

/** Headers of an answer to POST, all of them. */
export const ANSWERED: Fixed = { ...NOT_KEPT, 'Content-Type': JSON_TYPE }

/** Made once: the edge copies such an object as a whole, which is faster than name by name. */
const made = new Headers(ANSWERED)
const alike: HeadersOf = () => made

/**
 * The way of nearly every request that there is: one plain JSON input to one operation.
 *
 * It needs no router, no page files, no tags and no compression, which together took longer than the
 * calculation. Whatever is not surely such a request goes the app's way, which answers it the same or refuses it.
 */
export function straightWay(
  operations: readonly Operation[],
  headersOf: HeadersOf = alike,
): (request: Request, settings: Settings | undefined) => Promise<Response> | undefined {
  const byPath = new Map(operations.map((operation) => [`/v1/${operation.name}`, operation]))
  return (request, settings) => {
    if (request.method !== 'POST' || (settings?.CORS_ORIGINS ?? '') !== '') return undefined
    const operation = byPath.get(pathOf(request.url))
    if (!operation || !isPlain(request)) return undefined
    const headers = headersOf(request)
    return headers && answer(operation, request, headers, settings)
  }
}

const pathOf = (url: string) => url.slice(url.indexOf('/', 'https://'.length))

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

async function answer(
  operation: Operation,
  request: Request,
  headers: Told,
  settings: Settings | undefined,
): Promise<Response> {
  try {
    if (settings?.RATE_LIMITER) {
      const refusal = await limitedAt(settings.RATE_LIMITER, request)
      if (refusal) return refusal
    }
    return new Response(answerBody(operation, await request.text()), { headers })
  } catch (error) {
    return problemOf(request, error)
  }
}
