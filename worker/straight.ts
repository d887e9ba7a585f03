import type { Operation } from '../shared/operation.ts'
import { answerBody } from './answer-body.ts'
import { limitedAt } from './guards.ts'
import { problemOf } from './problem.ts'
import { EVERY_ANSWER, type Headers as Fixed, JSON_TYPE, NOT_KEPT } from './reply.ts'
import { BODY_LIMIT, type Settings } from './settings.ts'
import { askedOf, type SaturationQuery, saturationQuery } from './straight-query.ts'
import { ASK_AGAIN, isKnown, tagOf } from './tags.ts'

/** A request, whoever received it. */
export interface Asked {
  readonly method: string
  /** Path and query, as they came. */
  readonly address: string
  /** Whoever asked hung up. */
  readonly gone: boolean
  header(name: string): string | null
  /** The whole body. */
  text(): Promise<string>
}

/** An answer whose headers were all made before it: the same object for each of its kind. */
export interface Plain {
  readonly status: 200 | 304
  readonly headers: Fixed
  /** Of an answer that may be kept. */
  readonly tag?: string
  readonly body: string | null
}

/** A refusal is rare, and its headers are its own. */
export type Straight = Promise<Plain | Response>

/** The answer, or nothing where the routes must find it. */
export type StraightWay = (asked: Asked, settings: Settings | undefined) => Straight | undefined

/** Headers of an answer to POST, and of one to GET but for its tag. */
const ANSWERED: Fixed = { ...NOT_KEPT, 'Content-Type': JSON_TYPE }
const UNCHANGED: Fixed = { ...EVERY_ANSWER, 'Cache-Control': ASK_AGAIN }
const KEPT: Fixed = { ...UNCHANGED, 'Content-Type': JSON_TYPE }

/**
 * The way of nearly every request that there is: one plain JSON input to one operation, or saturation by a query.
 *
 * It needs no router, no page files and no compression, which together took longer than the
 * calculation. Whatever is not surely such a request goes the app's way, which answers it the same or refuses it.
 */
export function straightWay(operations: readonly Operation[]): StraightWay {
  const byPath = new Map(operations.map((operation) => [`/v1/${operation.name}`, operation]))
  const saturation = byPath.get('/v1/saturation')
  let byQuery: SaturationQuery | undefined
  return (asked, settings) => {
    if ((settings?.CORS_ORIGINS ?? '') !== '') return undefined
    if (asked.method === 'POST') {
      const operation = byPath.get(asked.address)
      return operation && isPlain(asked) ? toBody(operation, asked, settings) : undefined
    }
    if (asked.method !== 'GET' || !saturation) return undefined
    const query = askedOf(asked.address)
    if (!query) return undefined
    byQuery ??= saturationQuery(saturation)
    return toQuery(byQuery, query, asked, settings)
  }
}

async function toBody(
  operation: Operation,
  asked: Asked,
  settings: Settings | undefined,
): Promise<Plain | Response> {
  try {
    const refusal = settings?.RATE_LIMITER && (await limited(settings.RATE_LIMITER, asked))
    if (refusal) return refusal
    return { status: 200, headers: ANSWERED, body: answerBody(operation, await asked.text()) }
  } catch (error) {
    return problemOf(error, asked.gone)
  }
}

async function toQuery(
  byQuery: SaturationQuery,
  query: Parameters<SaturationQuery['answer']>,
  asked: Asked,
  settings: Settings | undefined,
): Promise<Plain | Response> {
  try {
    const refusal = settings?.RATE_LIMITER && (await limited(settings.RATE_LIMITER, asked))
    if (refusal) return refusal
    const tag = tagOf(asked.address, settings)
    if (isKnown(asked.header('if-none-match'), tag)) {
      return { status: 304, headers: UNCHANGED, tag, body: null }
    }
    return { status: 200, headers: KEPT, tag, body: byQuery.answer(...query) }
  } catch (error) {
    return problemOf(error, asked.gone)
  }
}

const limited = (limiter: NonNullable<Settings['RATE_LIMITER']>, asked: Asked) =>
  limitedAt(limiter, asked.header('cf-connecting-ip'))

/** A JSON body of a told length that fits, as it is. */
function isPlain(asked: Asked): boolean {
  const length = asked.header('content-length')
  return (
    asked.header('content-type') === JSON_TYPE &&
    length !== null &&
    Number(length) <= BODY_LIMIT &&
    asked.header('content-encoding') === null &&
    asked.header('transfer-encoding') === null
  )
}
