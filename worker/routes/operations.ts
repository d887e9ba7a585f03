import type { Context } from 'hono'
import { Hono } from 'hono/tiny'
import { CalcError } from '../../shared/errors.ts'
import type { Operation } from '../../shared/operation.ts'
import { hidesLetters } from '../../shared/visible.ts'
import { answerInTurns, bodyOf } from '../answer-body.ts'
import { batchBody, LINES, LIST } from '../batch/answers.ts'
import { batchRefusal, type Item, itemsOfLines, itemsOfList } from '../batch/items.ts'
import { bodyRefusal, isLines, limitBody } from '../body.ts'
import { JSON_TYPE, jsonReply, LINES_TYPE, NOT_KEPT, reply } from '../reply.ts'
import { BATCH_BODY_LIMIT, BODY_LIMIT, type Environment } from '../settings.ts'

/** `GET /v1/operations`. */
export function listRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/', () => jsonReply({ operations: operations.map(listed) }))
  return routes
}

/**
 * `POST /v1/<operation>` for every operation, and `POST /v1/<operation>/batch` for many inputs.
 *
 * Two addresses, so that a program knows by the address what comes back.
 */
export function operationRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  for (const operation of operations) {
    const hint = `A batch takes more: POST /v1/${operation.name}/batch.`
    routes.post(`/${operation.name}`, limitBody(BODY_LIMIT, hint), (context) =>
      answer(operation, context),
    )
  }
  for (const operation of operations) {
    const limit = limitBody(BATCH_BODY_LIMIT, 'Send it in parts.')
    routes.post(`/${operation.name}/batch`, limit, (context) => answerBatch(operation, context))
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

async function answer(operation: Operation, context: Context): Promise<Response> {
  const refusal = bodyRefusal(context, [JSON_TYPE])
  if (refusal) return refusal
  return reply(await answerInTurns(operation, await context.req.text()), JSON_TYPE, NOT_KEPT)
}

async function answerBatch(operation: Operation, context: Context): Promise<Response> {
  const refusal = bodyRefusal(context, [JSON_TYPE, LINES_TYPE])
  if (refusal) return refusal
  if (isLines(context)) return linesReply(operation, context)
  const body = await context.req.text()
  const list = bodyOf(body)
  if (Array.isArray(list)) return listReply(operation, list, hidesLetters(body))
  throw new CalcError('bad-input', 'A list of inputs is needed here.', {
    hint: `One input goes to /v1/${operation.name}; as a list of one it may come here.`,
  })
}

async function linesReply(operation: Operation, { req }: Context): Promise<Response> {
  // By its bytes: the edge does not take this type for a text, and warns whoever reads it as one.
  const body = new TextDecoder().decode(await req.arrayBuffer())
  return batchReply(operation, itemsOfLines(operation.name, body), LINES, hidesLetters(body))
}

const listReply = (operation: Operation, list: readonly unknown[], hides: boolean): Response =>
  batchReply(operation, itemsOfList(operation.name, list), LIST, hides)

function batchReply(
  operation: Operation,
  items: readonly Item[],
  form: typeof LINES,
  hides: boolean,
): Response {
  return (
    batchRefusal(operation.name, items) ??
    reply(
      batchBody(operation, items, form, hides),
      form === LINES ? `${LINES_TYPE}; charset=utf-8` : JSON_TYPE,
      NOT_KEPT,
    )
  )
}
