import { Hono } from 'hono/tiny'
import { KIND_NAMES, KINDS, UNITS } from '../../shared/quantity/index.ts'
import { jsonReply } from '../reply.ts'
import type { Environment } from '../settings.ts'

/** `GET /v1/units`: how quantities are written, by what they measure. */
export function unitRoutes(): Hono<Environment> {
  const routes = new Hono<Environment>()
  routes.get('/', () => jsonReply({ kinds: KINDS.map(listed) }))
  return routes
}

const listed = (kind: (typeof KINDS)[number]) => ({
  kind,
  name: KIND_NAMES[kind].name.replace(/^an? /u, ''),
  examples: KIND_NAMES[kind].examples,
  units: UNITS[kind].map(({ symbol, factor, offset, spellings }) => ({
    symbol,
    factor,
    offset,
    spellings: spellings.filter((spelling) => spelling !== symbol.toLowerCase()),
  })),
})
