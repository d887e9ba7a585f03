import { Hono } from 'hono/tiny'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { refrigerant, refrigerants } from '../../shared/refrigerant/index.ts'
import { inputFromQuery } from '../query.ts'
import type { Environment } from '../settings.ts'

/** `GET /v1/refrigerants`, one of them, and its saturation by query. */
export function refrigerantRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/', (context) => context.json({ refrigerants: refrigerants() }))
  routes.get('/:id', (context) => context.json(refrigerant(context.req.param('id')).info))
  const saturation = operations.find(({ name }) => name === 'saturation')
  if (saturation) {
    routes.get('/:id/saturation', (context) => {
      const { id } = refrigerant(context.req.param('id')).info
      const fields = fieldsOf(saturation).filter(({ name }) => name !== 'refrigerant')
      const input = inputFromQuery(fields, context.req.queries())
      return context.json(saturation.run({ ...input, refrigerant: id }))
    })
  }
  return routes
}
