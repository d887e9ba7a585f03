import { Hono } from 'hono/tiny'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { refrigerant, refrigerants } from '../../shared/refrigerant/index.ts'
import { visible } from '../../shared/visible.ts'
import { inputFromQuery } from '../query.ts'
import { JSON_TYPE, jsonReply, reply } from '../reply.ts'
import type { Environment } from '../settings.ts'

/** `GET /v1/refrigerants`, one of them, and its saturation by query. */
export function refrigerantRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/', () => jsonReply({ refrigerants: refrigerants() }))
  routes.get('/:id', (context) => jsonReply(refrigerant(context.req.param('id')).info))
  const saturation = operations.find(({ name }) => name === 'saturation')
  if (saturation) {
    routes.get('/:id/saturation', (context) => {
      const { id } = refrigerant(context.req.param('id')).info
      const fields = fieldsOf(saturation).filter(({ name }) => name !== 'refrigerant')
      const input = inputFromQuery(fields, context.req.queries())
      return reply(visible(saturation.text({ ...input, refrigerant: id })), JSON_TYPE)
    })
  }
  return routes
}
