import { Hono } from 'hono/tiny'
import { CalcError } from '../../shared/errors.ts'
import { parseJson } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { hidesLetters, jsonText } from '../../shared/visible.ts'
import { bodyRefusal, limitBody } from '../body.ts'
import { JSON_TYPE, jsonReply, NOT_KEPT, reply } from '../reply.ts'
import type { Environment } from '../settings.ts'

/** `POST /v1/<operation>` for every operation, and their list. */
export function operationRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/operations', () => jsonReply({ operations: operations.map(listed) }))
  for (const operation of operations) {
    routes.post(`/${operation.name}`, limitBody, async (context) => {
      const refusal = bodyRefusal(context)
      if (refusal) return refusal
      const body = await context.req.text()
      const answer = operation.run(bodyOf(body))
      return reply(jsonText(answer, hidesLetters(body)), JSON_TYPE, NOT_KEPT)
    })
  }
  return routes
}

const listed = ({ name, summary, description, example }: Operation) => ({
  name,
  summary,
  description,
  method: 'POST',
  address: `/v1/${name}`,
  example,
})

function bodyOf(text: string): unknown {
  if (text.trim() === '') {
    throw new CalcError('missing-input', 'The body is empty.', {
      hint: 'Send a JSON object with the fields of the operation; /reference lists them.',
    })
  }
  return parseJson(text)
}
