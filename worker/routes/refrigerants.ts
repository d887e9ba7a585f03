import { Hono } from 'hono/tiny'
import type { Operation } from '../../shared/operation.ts'
import { refrigerant, refrigerants } from '../../shared/refrigerant/index.ts'
import { JSON_TYPE, jsonReply, reply } from '../reply.ts'
import type { Environment } from '../settings.ts'
import { saturationQuery } from '../straight-query.ts'

/** `GET /v1/refrigerants`, one of them, and its saturation by query. */
export function refrigerantRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/', () => jsonReply({ refrigerants: refrigerants() }))
  routes.get('/:id', (context) => jsonReply(refrigerant(context.req.param('id')).info))
  const saturation = operations.find(({ name }) => name === 'saturation')
  if (saturation) {
    routes.get('/:id/saturation', ({ req }) =>
      reply(saturationQuery(saturation).answer(req.param('id'), req.queries()), JSON_TYPE),
    )
  }
  return routes
}
