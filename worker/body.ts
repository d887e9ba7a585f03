import type { Context, MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { doorProblem } from './problem.ts'
import { type JSON_TYPE, LINES_TYPE } from './reply.ts'
import type { Environment } from './settings.ts'

/** A length that is told is believed, as the server below holds the body to it; else the bytes are counted. */
export function limitBody(mostBytes: number, hint = ''): MiddlewareHandler<Environment> {
  const tooLarge = () =>
    doorProblem('body-too-large', `A body takes at most ${mostBytes} bytes here.`, { hint })
  const limitStream = bodyLimit({ maxSize: mostBytes, onError: tooLarge })
  return async (context, next) => {
    const length = context.req.header('content-length')
    if (length === undefined || context.req.header('transfer-encoding') !== undefined) {
      return limitStream(context, next)
    }
    return Number(length) > mostBytes ? tooLarge() : next()
  }
}

const JSON_BODY = /^application\/(?:json|[\w.+-]+\+json)\s*(?:;|$)/iu
/** There is no registered name for it; these are met. */
const LINES_BODY = /^application\/(?:x-)?(?:ndjson|jsonl|jsonlines)\s*(?:;|$)/iu
const CHARSET = /;\s*charset\s*=\s*"?([^";\s]*)/iu
/** ASCII is the beginning of UTF-8. */
const READ_CHARSETS: ReadonlySet<string> = new Set(['utf-8', 'utf8', 'us-ascii'])

/** Whether a body says that it is a JSON value a line. */
export const isLines = ({ req }: Context): boolean =>
  LINES_BODY.test(req.header('content-type') ?? '')

/** Why a body is not read, by what its headers say of it; nothing where it is of one of the types. */
export function bodyRefusal(
  { req }: Context,
  types: readonly (typeof JSON_TYPE | typeof LINES_TYPE)[],
): Response | undefined {
  const type = req.header('content-type')
  const isJson = type !== undefined && JSON_BODY.test(type)
  const areLines = type !== undefined && LINES_BODY.test(type)
  if (type === undefined || !(isJson || (areLines && types.includes(LINES_TYPE)))) {
    return doorProblem(
      'not-json',
      type === undefined
        ? 'The request does not say what its body is.'
        : `A body of type "${type.slice(0, 80)}" is not read here.`,
      {
        hint: areLines
          ? `Many inputs go to ${req.path}/batch.`
          : `Send Content-Type: ${types.join(', or for a JSON object a line ')}.`,
        headers: { Accept: types.join(', ') },
      },
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
