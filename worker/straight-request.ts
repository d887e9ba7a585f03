import type { Settings } from './settings.ts'
import type { Asked, Plain, StraightWay } from './straight.ts'
import { addressOf } from './tags.ts'

/** The straight way for requests and answers as the web has them. */
export function byRequest(
  way: StraightWay,
): (request: Request, settings: Settings | undefined) => Promise<Response> | undefined {
  return (request, settings) => way(asRequest(request), settings)?.then(responseOf)
}

const asRequest = (request: Request): Asked => ({
  method: request.method,
  address: addressOf(request.url),
  get gone() {
    return request.signal.aborted
  },
  header: (name) => request.headers.get(name),
  text: () => request.text(),
})

function responseOf(answer: Plain | Response): Response {
  if (answer instanceof Response) return answer
  const { status, headers, tag, body } = answer
  return new Response(body, {
    status,
    headers: tag === undefined ? headers : { ...headers, ETag: tag },
  })
}
