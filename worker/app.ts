import { etag } from 'hono/etag'
import { methodNotAllowed } from 'hono/method-not-allowed'
import { Hono } from 'hono/tiny'
import { nearestNames } from '../shared/nearest.ts'
import type { Operation } from '../shared/operation.ts'
import { operations as everyOperation } from '../shared/operations.ts'
import { cacheable, crossOrigin, rateLimit, securityHeaders } from './guards.ts'
import { openapiDocument } from './openapi/document.ts'
import { frontPage } from './pages/front.ts'
import { referencePage } from './pages/reference.ts'
import { STYLE } from './pages/style.ts'
import { doorProblem, problemOf } from './problem.ts'
import { operationRoutes } from './routes/operations.ts'
import { refrigerantRoutes } from './routes/refrigerants.ts'
import { tableRoutes } from './routes/table.ts'
import type { Environment } from './settings.ts'

/**
 * The service: the API under `/v1`, its description, and pages about it.
 *
 * The same on the edge and on a server of one's own; what may be set comes in as bindings, see {@link Environment}.
 */
export function createApp(
  options: { readonly operations?: readonly Operation[] } = {},
): Hono<Environment> {
  const operations = options.operations ?? everyOperation
  const app = new Hono<Environment>()
  app.onError((error, context) => problemOf(context, error))
  app.notFound((context) => {
    const name = /^\/v1\/([^/]+)\/?$/u.exec(context.req.path)?.[1]
    const nearest =
      name === undefined
        ? []
        : nearestNames(
            name,
            operations.map((operation) => operation.name),
          )
    return doorProblem(
      context,
      'not-found',
      `There is nothing at ${context.req.path.slice(0, 120)}.`,
      {
        hint:
          nearest.length > 0
            ? `Did you mean /v1/${nearest.join(' or /v1/')}?`
            : 'GET /v1/operations lists the operations, /reference explains them.',
      },
    )
  })
  app.use(securityHeaders())
  app.use(crossOrigin())
  app.use(
    methodNotAllowed({
      app,
      onMethodNotAllowed: (context, methods) =>
        context.req.method === 'OPTIONS'
          ? // Not by the context, which still has the type of the refusal that this stands in for.
            new Response(null, { status: 204, headers: { Allow: methods.join(', ') } })
          : doorProblem(
              context,
              'method-not-allowed',
              `${context.req.method} does nothing at this address.`,
              { hint: `Use ${methods.join(' or ')}.`, headers: { Allow: methods.join(', ') } },
            ),
    }),
  )
  app.get('/healthz', (context) =>
    context.json({ status: 'ok' }, 200, { 'Cache-Control': 'no-store' }),
  )
  app.use('/v1/*', rateLimit())
  app.use(cacheable())
  app.use(etag())
  const document = once(() => openapiDocument(operations))
  const documentText = once(() => JSON.stringify(document()))
  app.get('/openapi.json', (context) =>
    context.body(documentText(), 200, { 'Content-Type': 'application/json' }),
  )
  const reference = once(() => referencePage(document()))
  app.get('/reference', (context) => context.html(reference()))
  app.get('/style.css', (context) => context.body(STYLE, 200, { 'Content-Type': 'text/css' }))
  app.get('/', (context) => context.html(frontPage(operations)))
  app.route('/v1/refrigerants', refrigerantRoutes(operations))
  app.route('/v1/table', tableRoutes(operations))
  app.route('/v1', operationRoutes(operations))
  return app
}

/** Made when first asked for, then kept. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
