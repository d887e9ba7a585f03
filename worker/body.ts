import type { Context, MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { doorProblem } from './problem.ts'
import { BODY_LIMIT, type Environment } from './settings.ts'

const tooLarge = () => doorProblem('body-too-large', `A body takes at most ${BODY_LIMIT} bytes.`)

const limitStream = bodyLimit({ maxSize: BODY_LIMIT, onError: tooLarge })

/** A length that is told is believed, as the server below holds the body to it; else the bytes are counted. */
export const limitBody: MiddlewareHandler<Environment> = async (context, next) => {
  const length = context.req.header('content-length')
  if (length === undefined || context.req.header('transfer-encoding') !== undefined) {
    return limitStream(context, next)
  }
  return Number(length) > BODY_LIMIT ? tooLarge() : next()
}

const JSON_BODY = /^application\/(?:json|[\w.+-]+\+json)\s*(?:;|$)/iu
const CHARSET = /;\s*charset\s*=\s*"?([^";\s]*)/iu
/** ASCII is the beginning of UTF-8. */
const READ_CHARSETS: ReadonlySet<string> = new Set(['utf-8', 'utf8', 'us-ascii'])

/** Why a body is not read, by what its headers say of it; nothing where it is. */
export function bodyRefusal({ req }: Context): Response | undefined {
  const type = req.header('content-type')
  if (type === undefined || !JSON_BODY.test(type)) {
    return doorProblem(
      'not-json',
      type === undefined
        ? 'The request does not say what its body is.'
        : `A body of type "${type.slice(0, 80)}" is not read here.`,
      { hint: 'Send Content-Type: application/json.', headers: { Accept: 'application/json' } },
    )
  }
  const charset = CHARSET.exec(type)?.[1]
  if (charset !== undefined && !READ_CHARSETS.has(charset.toLowerCase())) {
    return doorProblem('other-charset', `A body in ${charset.slice(0, 40)} is not read here.`, {
      hint: 'JSON is sent in UTF-8 (RFC 8259).',
    })
  }
  const encoding = req.header('content-encoding')
  if (encoding !== undefined && encoding.trim().toLowerCase() !== 'identity') {
    return doorProblem('encoded-body', `A body in ${encoding.slice(0, 40)} is not unpacked here.`, {
      hint: 'Send it as it is, without Content-Encoding.',
      // RFC 9110, 12.5.3: what a request may be encoded in.
      headers: { 'Accept-Encoding': 'identity' },
    })
  }
  return undefined
}
