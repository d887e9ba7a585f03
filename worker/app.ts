import type { MiddlewareHandler } from 'hono'
import { methodNotAllowed } from 'hono/method-not-allowed'
import { Hono } from 'hono/tiny'
import { ABOUT } from '../shared/about.ts'
import { nearestNames } from '../shared/nearest.ts'
import { type Operation, readPlainly } from '../shared/operation.ts'
import { operations as everyOperation } from '../shared/operations.ts'
import { plainInput } from '../shared/plain-input.ts'
import { documents as everyDocument } from './documents/made.ts'
import { crossOrigin, rateLimit } from './guards.ts'
import { withHost } from './pages/host.ts'
import { ICON } from './pages/icon.ts'
import { STYLE } from './pages/style.ts'
import { doorProblem, problemOf } from './problem.ts'
import { emptyReply, HTML_TYPE, JSON_TYPE, NOT_KEPT, reply } from './reply.ts'
import { diagramRoutes } from './routes/diagram.ts'
import { listRoutes, operationRoutes } from './routes/operations.ts'
import { refrigerantRoutes } from './routes/refrigerants.ts'
import { tableRoutes } from './routes/table.ts'
import { unitRoutes } from './routes/units.ts'
import type { Environment } from './settings.ts'
import { type HeadersOf, straightWay } from './straight.ts'
import { tagged } from './tags.ts'

/**
 * The service: the API under `/v1`, its description, and pages about it.
 *
 * The same on the edge and on a server of one's own; what may be set comes in as bindings, see {@link Environment}.
 */
export function createApp(
  options: {
    readonly operations?: readonly Operation[]
    /** What goes around all else, first outermost: compression where nothing in front does it. */
    readonly around?: readonly MiddlewareHandler[]
    /** What is told with an answer that nothing need go around; by it, what must have something around it. */
    readonly headersOf?: HeadersOf
  } = {},
): Hono<Environment> {
  readPlainly(plainInput)
  const operations = options.operations ?? everyOperation
  const app = new Hono<Environment>()
  app.onError((error, { req }) => problemOf(req.raw, error))
  app.notFound(({ req }) => notFound(req.path, operations))
  for (const around of options.around ?? []) app.use(around)
  app.use(crossOrigin())
  app.use(withoutSlash)
  app.use('/v1/*', rateLimit())
  // What is asked most comes before all that it needs nothing of.
  app.route('/v1', operationRoutes(operations))
  app.use(
    methodNotAllowed({
      app,
      onMethodNotAllowed({ req }, methods) {
        const known = methods.toSorted()
        const headers = { Allow: known.join(', ') }
        // Not by the context, which still has the type of the refusal that this stands in for.
        if (req.method === 'OPTIONS') return emptyReply(204, headers)
        const hint = `Use ${known.join(' or ')}.`
        const detail = `${req.method} does nothing at this address.`
        return doorProblem('method-not-allowed', detail, { hint, headers })
      },
    }),
  )
  const health = JSON.stringify({ status: 'ok', version: ABOUT.version })
  app.get('/healthz', () => reply(health, JSON_TYPE, NOT_KEPT))
  app.use(tagged())
  const documents = everyDocument(operations)
  app.get('/openapi.json', async ({ env }) => reply(await documents.openapi(env), JSON_TYPE))
  app.get('/reference', async ({ req, env }) => {
    const page = await documents.reference(env)
    return reply(withHost(page, req.url, req.header('x-forwarded-proto')), HTML_TYPE)
  })
  app.get('/problems/:code', async ({ req, env }) => {
    const page = await documents.problem(req.param('code'), env)
    return page === undefined ? notFound(req.path, operations) : reply(page, HTML_TYPE)
  })
  app.get('/reference/guide/:name', async ({ req, env }) => {
    const page = await documents.guide(req.param('name'), env)
    return page === undefined ? notFound(req.path, operations) : reply(page, HTML_TYPE)
  })
  for (const address of ['/favicon.svg', '/favicon.ico']) {
    app.get(address, () => reply(ICON, 'image/svg+xml'))
  }
  app.get('/style.css', () => reply(STYLE, 'text/css; charset=utf-8'))
  app.get('/', async ({ env }) => reply(await documents.front(env), HTML_TYPE))
  app.route('/v1/refrigerants', refrigerantRoutes(operations))
  app.route('/v1/units', unitRoutes())
  app.route('/v1/diagram', diagramRoutes(operations))
  app.route('/v1/table', tableRoutes(operations))
  app.route('/v1/operations', listRoutes(operations))
  const straight = straightWay(operations, options.headersOf)
  const byRoutes = app.fetch
  app.fetch = (request, settings, execution) =>
    straight(request, settings) ?? byRoutes(request, settings, execution)
  return app
}

/** No address ends with a slash, so that each thing has one: whichever router finds the route. */
const withoutSlash: MiddlewareHandler = ({ req: { path } }, next) => {
  if (path === '/' || !path.endsWith('/')) return next()
  const hint = `No address ends with a slash: ${path.slice(0, 120).replace(/\/+$/u, '')}.`
  return Promise.resolve(doorProblem('not-found', nothingAt(path), { hint }))
}

function notFound(path: string, operations: readonly Operation[]): Response {
  const name = /^\/v1\/([^/]+)$/u.exec(path)?.[1]
  const nearest =
    name === undefined
      ? []
      : nearestNames(
          name,
          operations.map((operation) => operation.name),
        )
  return doorProblem('not-found', nothingAt(path), {
    hint:
      nearest.length > 0
        ? `Did you mean /v1/${nearest.join(' or /v1/')}?`
        : 'GET /v1/operations lists the operations, /reference explains them.',
  })
}

const nothingAt = (path: string) => `There is nothing at ${path.slice(0, 120)}.`
