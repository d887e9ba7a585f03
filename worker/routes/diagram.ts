import type { Context } from 'hono'
import { Hono } from 'hono/tiny'
import { DRAWN } from '../../shared/diagram/all.ts'
import { DIAGRAMS, type DiagramKind } from '../../shared/diagram/index.ts'
import { DRAWING } from '../../shared/diagram/options.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { bodyOf } from '../answer-body.ts'
import { bodyRefusal, limitBody } from '../body.ts'
import { inputFromQuery } from '../query.ts'
import { JSON_TYPE, jsonReply, NOT_KEPT, reply } from '../reply.ts'
import { BODY_LIMIT, type Environment } from '../settings.ts'
import { inTurns } from '../turns.ts'

export const SVG_TYPE = 'image/svg+xml' as const

/** The kinds of picture of the operations that there are. */
export const diagramsFor = (operations: readonly Operation[]): readonly DiagramKind[] =>
  DIAGRAMS.filter(({ operation }) => operations.some(({ name }) => name === operation))

/**
 * `POST /v1/diagram/<kind>`: the picture of an operation's answer, by the operation's own input; how it
 * is drawn is asked for by query. `GET /v1/diagram` lists the kinds.
 */
export function diagramRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  const kinds = diagramsFor(operations)
  routes.get('/', () => jsonReply({ diagrams: kinds.map(listed) }))
  for (const entry of kinds) {
    routes.post(`/${entry.kind}`, limitBody(BODY_LIMIT, 'Send less.'), (context) =>
      draw(entry, context),
    )
  }
  return routes
}

const listed = ({ kind, operation, summary }: DiagramKind) => ({
  kind,
  operation,
  summary,
  method: 'POST',
  address: `/v1/diagram/${kind}`,
})

async function draw(entry: DiagramKind, context: Context): Promise<Response> {
  const refusal = bodyRefusal(context, [JSON_TYPE])
  if (refusal) return refusal
  const options = inputFromQuery(fieldsOf(DRAWING), context.req.queries())
  const input = bodyOf(await context.req.text())
  const work = DRAWN[entry.kind].drawInPieces(input, options)
  return reply(await inTurns(work), SVG_TYPE, NOT_KEPT)
}
