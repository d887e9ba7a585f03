import type { IncomingMessage, ServerResponse } from 'node:http'
import { keptWith } from '../../shared/kept.ts'
import { REFUSED, refusedAs } from '../problem.ts'
import type { Headers } from '../reply.ts'
import type { Settings } from '../settings.ts'
import {
  type Asked,
  type HeadersOf,
  type Straight,
  type straightTo,
  unchanged,
} from '../straight.ts'

/** A request whose body is there. */
interface Waiting {
  readonly asked: Asked
  readonly response: ServerResponse
  readonly straight: Straight
  readonly body: string
}

interface Answered {
  readonly response: ServerResponse
  readonly status: number
  readonly headers: Headers
  readonly tag?: string | undefined
  readonly text: string
}

/** What came together is computed together for no longer than this, ms; then answers go out and others are heard. */
const TURN_MS = 2

/**
 * Answers plain requests on Node's own objects, without making a request and a response of the platform of them.
 *
 * Requests that came at the same time are computed one after the other and only then sent: between
 * two of them the system would drive the calculation out of the processor's cache, and reading it
 * back takes longer than the calculation.
 *
 * @returns Whether it answers; if not, nothing is read yet.
 */
export function straightOnNode(
  straightOf: ReturnType<typeof straightTo>,
  settings: Settings,
  headersOf: HeadersOf,
): (request: IncomingMessage, response: ServerResponse) => boolean {
  let waiting: Waiting[] = []
  const answered = ({ asked, response, straight, body }: Waiting): Answered => {
    const { headers, tag, isKnown } = straight
    if (isKnown && tag !== undefined) {
      return { response, status: 304, headers: unchanged(headers, tag), text: '' }
    }
    try {
      return { response, status: 200, headers, tag, text: straight.answer(body) }
    } catch (error) {
      return { response, headers: headersOf(asked, REFUSED) ?? REFUSED, ...refusedAs(error) }
    }
  }
  const turn = () => {
    const end = performance.now() + TURN_MS
    const answers: Answered[] = []
    let taken = 0
    do {
      const next = waiting[taken]
      taken += 1
      // Whoever hung up reads no answer.
      if (next && !next.response.destroyed) answers.push(answered(next))
    } while (taken < waiting.length && performance.now() < end)
    waiting = waiting.slice(taken)
    if (waiting.length > 0) setImmediate(turn)
    for (const answer of answers) send(answer)
  }
  return (request, response) => {
    const asked = askedOf(request)
    const straight = asked && straightOf(asked, settings)
    if (!straight) return false
    const take = (body: string) => {
      if (waiting.length === 0) setImmediate(turn)
      waiting.push({ asked, response, straight, body })
    }
    if (straight.tag === undefined) readBody(request, take)
    else take('')
    return true
  }
}

/** What every host looks like that needs no care. */
const PLAIN_HOST = /^[a-z0-9._-]+(?::\d{1,5})?$/u

function askedOf(request: IncomingMessage): Asked | undefined {
  const { method = '', url = '', headers } = request
  const { host = '' } = headers
  // A second type of the body would be dropped silently.
  if (!PLAIN_HOST.test(host) || hasTwoTypes(request)) return undefined
  const scheme = 'encrypted' in request.socket ? 'https' : 'http'
  const get = (name: string) => {
    const value = headers[name]
    return typeof value === 'string' ? value : null
  }
  return { method, url: `${scheme}://${host}${url}`, headers: { get } }
}

const TYPE = 'content-type'

function hasTwoTypes({ rawHeaders }: IncomingMessage): boolean {
  let types = 0
  for (let index = 0; index < rawHeaders.length; index += 2) {
    const name = rawHeaders[index] ?? ''
    if (name.length === TYPE.length && name.toLowerCase() === TYPE) types += 1
  }
  return types > 1
}

function readBody(request: IncomingMessage, take: (body: string) => void): void {
  const chunks: Buffer[] = []
  request.on('data', (chunk: Buffer) => chunks.push(chunk))
  request.on('end', () => {
    const [first] = chunks
    const all = first && chunks.length === 1 ? first : Buffer.concat(chunks)
    const text = all.toString()
    // A mark of the byte order is no part of the text.
    take(text.startsWith('\ufeff') ? text.slice(1) : text)
  })
}

function send({ response, status, headers, tag, text }: Answered): void {
  const lines = [...linesOf(headers)]
  if (tag !== undefined) lines.push('ETag', tag)
  if (status !== 304) lines.push('Content-Length', String(Buffer.byteLength(text)))
  response.writeHead(status, lines)
  response.end(text)
}

/** Names and values in turn, as Node takes them at once. */
const linesOf = keptWith((headers: Headers) => Object.entries(headers).flat())
