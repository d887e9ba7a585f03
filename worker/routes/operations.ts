import type { Context, MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { Hono } from 'hono/tiny'
import { CalcError } from '../../shared/errors.ts'
import { parseJson } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { doorProblem } from '../problem.ts'
import { BODY_LIMIT, type Environment } from '../settings.ts'

/** `POST /v1/<operation>` for every operation, and their list. */
export function operationRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/operations', (context) => context.json({ operations: operations.map(listed) }))
  for (const operation of operations) {
    routes.post(`/${operation.name}`, limitBody, async (context) => {
      const refusal = contentRefusal(context)
      if (refusal) return refusal
      const answer = operation.run(bodyOf(await context.req.text()))
      return context.json(answer, 200, { 'Cache-Control': 'no-store' })
    })
  }
  return routes
}

const tooLarge = (context: Context) =>
  doorProblem(context, 'body-too-large', `A body takes at most ${BODY_LIMIT} bytes.`)

const limitStream = bodyLimit({ maxSize: BODY_LIMIT, onError: tooLarge })

/** A length that is told is believed, as the server below holds the body to it; else the bytes are counted. */
const limitBody: MiddlewareHandler<Environment> = async (context, next) => {
  const length = context.req.header('content-length')
  if (length === undefined || context.req.header('transfer-encoding') !== undefined) {
    return limitStream(context, next)
  }
  return Number(length) > BODY_LIMIT ? tooLarge(context) : next()
}

const listed = ({ name, summary, description, example }: Operation) => ({
  name,
  summary,
  description,
  method: 'POST',
  address: `/v1/${name}`,
  example,
})

const JSON_TYPE = /^application\/(?:json|[\w.+-]+\+json)\s*(?:;|$)/iu

function contentRefusal(context: Context): Response | undefined {
  const given = context.req.header('content-type')
  if (given !== undefined && JSON_TYPE.test(given)) return undefined
  return doorProblem(
    context,
    'not-json',
    given === undefined
      ? 'The request does not say what its body is.'
      : `A body of type "${given.slice(0, 80)}" is not read here.`,
    { hint: 'Send Content-Type: application/json.', headers: { Accept: 'application/json' } },
  )
}

function bodyOf(text: string): unknown {
  if (text.trim() === '') {
    throw new CalcError('missing-input', 'The body is empty.', {
      hint: 'Send a JSON object with the fields of the operation; /reference lists them.',
    })
  }
  return parseJson(text)
}
