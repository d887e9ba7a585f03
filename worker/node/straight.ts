import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http'
import type { TLSSocket } from 'node:tls'
import { keptWith } from '../../shared/kept.ts'
import { type Headers, NOT_KEPT } from '../reply.ts'
import type { Settings } from '../settings.ts'
import type { Asked, Plain, StraightWay } from '../straight.ts'
import { isTrusted, withoutTls } from './plain-http.ts'

/**
 * The straight way by Node's own objects: those of the web cost more to make than most answers do.
 *
 * Whoever reads compressed answers goes by the routes, and so does an odd address.
 */
export function straightOnNode(
  way: StraightWay,
  settings: Settings,
  byRoutes: RequestListener,
): RequestListener {
  return (request, response) => {
    const { host, 'accept-encoding': packed } = request.headers
    const asked =
      packed === undefined && host !== undefined && PLAIN_HOST.test(host)
        ? new NodeRequest(request)
        : undefined
    const answer = asked && way(asked, settings)
    if (!answer) return byRoutes(request, response)
    const origin = `${(request.socket as TLSSocket).encrypted ? 'https' : 'http'}://${host}/`
    const trusted = isTrusted(origin, request.headers['x-forwarded-proto'])
    void answer.then((found) =>
      found instanceof Response
        ? sendRefusal(response, found, trusted)
        : sendPlain(response, found, trusted),
    )
  }
}

/** What else stands there, the routes refuse. */
const PLAIN_HOST = /^(?:[\w.-]+|\[[\da-f:.]+\])(?::\d{1,5})?$/iu

class NodeRequest implements Asked {
  readonly #request: IncomingMessage

  constructor(request: IncomingMessage) {
    this.#request = request
  }

  get method() {
    return this.#request.method ?? ''
  }

  get address() {
    return this.#request.url ?? ''
  }

  get gone() {
    return this.#request.socket.destroyed
  }

  header(name: string) {
    const value = this.#request.headers[name]
    return value === undefined ? null : String(value)
  }

  text(): Promise<string> {
    const request = this.#request
    return new Promise((resolve, reject) => {
      const parts: Buffer[] = []
      request.on('data', (part: Buffer) => parts.push(part))
      request.on('end', () => resolve(textOf(parts)))
      request.on('error', reject)
    })
  }
}

/** As the web reads a body: UTF-8 without its mark. */
function textOf(parts: readonly Buffer[]): string {
  const [first] = parts
  if (!first) return ''
  const text = (parts.length === 1 ? first : Buffer.concat(parts)).toString()
  return text.startsWith('\uFEFF') ? text.slice(1) : text
}

function sendPlain(response: ServerResponse, { status, headers, tag, body }: Plain, tls: boolean) {
  const list = [...(tls ? trusted : untrusted)(headers)]
  if (tag !== undefined) list.push('ETag', tag)
  if (body !== null) list.push('Content-Length', String(Buffer.byteLength(body)))
  response.writeHead(status, list)
  response.end(body ?? undefined)
}

async function sendRefusal(response: ServerResponse, refusal: Response, tls: boolean) {
  const body = await refusal.text()
  const headers = Object.fromEntries(refusal.headers)
  response.writeHead(refusal.status, {
    ...(tls ? headers : withoutTls(headers)),
    'Content-Length': String(Buffer.byteLength(body)),
  })
  response.end(body)
}

/** What may be kept says that it might be compressed. */
const varying = (headers: Headers): Headers =>
  headers['Cache-Control'] === NOT_KEPT['Cache-Control']
    ? headers
    : { ...headers, Vary: 'Accept-Encoding' }

/** Names and values in turn, as Node takes them without looking through them. */
const trusted = keptWith((headers: Headers) => Object.entries(varying(headers)).flat())
const untrusted = keptWith((headers: Headers) =>
  Object.entries(withoutTls(varying(headers))).flat(),
)
