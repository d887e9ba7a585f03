import { createServer, request, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { getRequestListener } from '@hono/node-server'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { operation, operations } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { compressed } from '../../worker/node/compressed.ts'
import { plainHttp } from '../../worker/node/plain-http.ts'
import { straightOnNode } from '../../worker/node/straight.ts'
import { straightWay } from '../../worker/straight.ts'

const BUILD = 'a'
const EXAMPLE = JSON.stringify(operation('saturation').example)
const QUERY = '/v1/refrigerants/R-134a/saturation?pressure=32%20psig'
const app = createApp({ around: [plainHttp, compressed()], routesOnly: true })
const routed = getRequestListener((asked) => app.fetch(asked, { BUILD }))
const byRoutes = vi.fn(
  (...[asked, answer]: Parameters<typeof routed>) => void routed(asked, answer),
)
const straight = straightOnNode(straightWay(operations), { BUILD }, byRoutes)

const ours = createServer(straight)
const both = [ours, createServer((asked, answer) => void routed(asked, answer))]
beforeAll(async () => {
  for (const server of both) await new Promise<void>((open) => server.listen(0, open))
})
afterAll(() => both.map((server) => server.close()))

interface Sent {
  readonly path?: string
  readonly headers?: Record<string, string>
  /** Each in a packet of its own. */
  readonly parts?: readonly (string | Buffer)[]
}

interface Answer {
  readonly status: number | undefined
  readonly vary: string | undefined
  readonly headers: Record<string, unknown>
  readonly text: string
}

const ask = (server: Server, { path = '/v1/saturation', headers = {}, parts }: Sent) =>
  new Promise<Answer>((resolve, reject) => {
    const { port } = server.address() as AddressInfo
    const length = parts?.reduce((sum, part) => sum + Buffer.byteLength(part), 0)
    const body = { 'content-type': 'application/json', 'content-length': String(length) }
    const asked = request({
      port,
      path,
      method: parts ? 'POST' : 'GET',
      headers: { host: 'localhost', ...(parts ? body : {}), ...headers },
    })
    asked.on('error', reject)
    asked.on('response', (response) => {
      const read: Buffer[] = []
      response.on('data', (part: Buffer) => read.push(part))
      response.on('end', () => {
        const { date: _, connection: _a, 'keep-alive': _b, ...told } = response.headers
        // How it was sent; and what only a refusal and an unchanged answer do without.
        const { 'transfer-encoding': _c, 'content-length': _d, vary: _e, ...own } = told
        const text = Buffer.concat(read).toString()
        resolve({ status: response.statusCode, vary: told.vary, headers: own, text })
      })
    })
    const send = async () => {
      for (const part of parts ?? []) {
        asked.write(part)
        await new Promise((next) => setTimeout(next, 5))
      }
      asked.end()
    }
    void send()
  })

const letters = Buffer.from('{"refrigerant":"R-134a","temperature":"5 °C"}')
const split = letters.indexOf(0xb0)

describe('the straight way by Node’s own objects', () => {
  it.each<[what: string, sent: Sent, status: number]>([
    ['an input', { parts: [EXAMPLE] }, 200],
    ['a letter cut in two', { parts: [letters.subarray(0, split), letters.subarray(split)] }, 200],
    ['a mark of its byte order', { parts: [`\uFEFF${EXAMPLE}`] }, 200],
    [
      'letters that are not seen',
      { parts: ['{"refrigerant":"R-134a","pressure":"3\\u202e"}'] },
      400,
    ],
    ['what is refused', { parts: ['{"refrigerant":"R-999","pressure":"32 psig"}'] }, 404],
    ['nothing', { parts: [''] }, 400],
    ['what is to be kept', { path: QUERY }, 200],
    ['a refused query', { path: `${QUERY}&pressure=3` }, 400],
    ['plain http', { parts: [EXAMPLE], headers: { host: 'shop.test' } }, 200],
    ['a refusal by plain http', { parts: ['['], headers: { host: 'shop.test' } }, 400],
    ['a query by plain http', { path: QUERY, headers: { host: 'shop.test:8080' } }, 200],
    [
      'plain http behind TLS',
      { parts: [EXAMPLE], headers: { host: 'shop.test', 'x-forwarded-proto': 'https' } },
      200,
    ],
  ])('answers %s as the routes do, without them', async (_, sent, status) => {
    byRoutes.mockClear()
    const [answer, routes] = await Promise.all(both.map((server) => ask(server, sent)))
    expect({ ...answer, vary: '' }).toEqual({ ...routes, vary: '' })
    expect(answer?.status).toBe(status)
    if (status === 200) expect(answer?.vary).toBe(routes?.vary)
    expect(byRoutes).not.toHaveBeenCalled()
  })

  it('leaves off by plain http what browsers heed over TLS alone', async () => {
    const at = async (host: string) =>
      Object.keys((await ask(ours, { parts: [EXAMPLE], headers: { host } })).headers)
    expect(await at('shop.test')).not.toContain('cross-origin-opener-policy')
    expect(await at('127.0.0.1:8080')).toContain('cross-origin-opener-policy')
  })

  it('sends nothing again that is known', async () => {
    const { headers } = await ask(ours, { path: QUERY })
    const known = { 'if-none-match': String(headers.etag) }
    const [answer, routes] = await Promise.all(
      both.map((server) => ask(server, { path: QUERY, headers: known })),
    )
    expect(answer).toEqual({ ...routes, vary: 'Accept-Encoding' })
    expect([answer?.status, answer?.text]).toEqual([304, ''])
  })

  it.each<[string, Sent]>([
    ['packed answers', { parts: [EXAMPLE], headers: { 'accept-encoding': 'gzip' } }],
    ['an odd host', { parts: [EXAMPLE], headers: { host: 'a b' } }],
    ['steps upward', { path: '/v1/refrigerants/../saturation' }],
    ['a page', { path: '/healthz' }],
  ])('leaves %s to the routes', async (_, sent) => {
    byRoutes.mockClear()
    const answer = await ask(ours, sent)
    expect(answer.status).toBeGreaterThanOrEqual(200)
    expect(byRoutes).toHaveBeenCalledOnce()
  })
})
