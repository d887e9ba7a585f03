import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DIAGRAMS, exampleOf } from '../../shared/diagram/index.ts'
import { operation, operations } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { pageFiles } from '../../worker/node/page-files.ts'
import { onWorkerd, type Server } from '../browser/servers.ts'
import { leaner } from '../generate/edge-plugins.ts'
import { guides } from '../generate/guides.ts'

/** Headers by which an answer is judged: the tag names the deployment, and so differs. */
const headersOf = (response: Response) =>
  [
    ...['content-type', 'cache-control', 'content-security-policy', 'allow', 'vary'],
    ...['x-chargewright-version', 'access-control-allow-origin', 'x-frame-options'],
  ].map((name) => `${name}: ${response.headers.get(name)?.replace(', Accept-Encoding', '')}`)

const heard = async (response: Response) => ({
  status: response.status,
  headers: headersOf(response),
  text: await response.text(),
})

describe('the program of the edge, built, in workerd', () => {
  const app = createApp()
  let server: Server
  beforeAll(async () => {
    server = await onWorkerd()
  }, 120_000)
  afterAll(() => server.end())

  const both = async (address: string, init?: RequestInit) => {
    const url = `${server.url}${address}`
    return {
      edge: await heard(await fetch(url, init)),
      own: await heard(await app.request(url, init)),
    }
  }

  it.each([
    '/openapi.json',
    '/reference',
    ...guides().map(({ name }) => `/reference/guide/${name}`),
    ...['/problems/bad-input', '/problems/too-many-requests', '/problems/internal'],
    ...['/problems/none', '/problems/none.txt', '/problems/..%2Fopenapi', '/problems/'],
    ...['/reference/guide/none', '/reference/', '/documents/openapi.txt', '/documents/none'],
    ...['/v1/operations', '/v1/units', '/v1/diagram', '/style.css', '/nowhere'],
  ])('says at %s what a server of one’s own says', async (address) => {
    const { edge, own } = await both(address)
    expect(edge).toEqual(own)
    expect(edge.text.length).toBeGreaterThan(50)
  })

  it('lays nothing among the files that a server of one’s own would give', async () => {
    const own = createApp({ around: [pageFiles('dist/page')] })
    expect(existsSync('dist/page/documents/openapi.txt')).toBe(true)
    expect((await own.request('/documents/openapi.txt')).status).toBe(404)
    expect((await own.request('/manifest.webmanifest')).status).toBe(200)
  })

  it('names the host that it was asked from', async () => {
    const page = await (await fetch(`${server.url}/reference`)).text()
    expect(page).toContain(`curl -X POST ${server.url}/v1/`)
    expect(page).not.toContain('service.invalid')
  })

  it.each(['/openapi.json', '/reference', '/problems/bad-input'])(
    'has at %s a tag that saves asking again, and takes no other method',
    async (address) => {
      const { headers } = await fetch(server.url + address, { method: 'HEAD' })
      const known = { 'if-none-match': headers.get('etag') ?? 'none' }
      expect((await fetch(server.url + address, { headers: known })).status).toBe(304)
      const { edge, own } = await both(address, { method: 'POST', body: '{}' })
      expect(edge).toEqual(own)
      expect(edge.status).toBe(405)
    },
  )

  it.each(operations)(
    'answers the example of $name as the core does',
    async ({ name, example, run }) => {
      const response = await fetch(`${server.url}/v1/${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(example),
      })
      const told = JSON.parse(JSON.stringify(run(example)))
      expect(await response.json()).toEqual(told)
    },
  )

  it.each(DIAGRAMS)('draws $kind as a server of one’s own does', async (entry) => {
    const example = exampleOf(entry, operation(entry.operation))
    const { edge, own } = await both(`/v1/diagram/${entry.kind}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(example),
    })
    expect(edge).toEqual(own)
    expect(edge.text).toContain('<svg')
  })

  it.each(operations)('refuses for $name what does not fit in the same words', async ({ name }) => {
    for (const body of ['{}', '{"nothing":1}', '{"refrigerant":7,"units":"metric"}', '[1]', '{']) {
      const headers = { 'content-type': 'application/json' }
      const { edge, own } = await both(`/v1/${name}`, { method: 'POST', headers, body })
      expect(edge).toEqual(own)
    }
  })
})

describe('what is left out of the program of the edge', () => {
  it('is descriptions, the schemas of answers, and schemas that nobody uses', () => {
    const code = `import * as z from 'zod'
export const a = z.string().min(1).describe('A text').optional()
const out = z.strictObject({ b: z.number().describe('A number') })
export const made = defineOperation({ name: 'made', result: out, fields: { a } })
const output = z.strictObject({ out })
const plain = () => z.string().describe(\`in a \${'function'}\`)
`
    expect(leaner('made.ts', code)).toBe(`import * as z from 'zod'
export const a = /* @__PURE__ */ (() => (z.string().min(1).optional()))()
const out = /* @__PURE__ */ (() => (z.strictObject({ b: z.number() })))()
export const made = /* @__PURE__ */ (() => (defineOperation({ name: 'made', result: undefined as never, fields: { a } })))()
const output = /* @__PURE__ */ (() => (undefined as never))()
const plain = () => z.string()
`)
  })

  it('is described by schemas alone: nothing else has a method of that name', () => {
    const files = readdirSync('shared', { recursive: true, encoding: 'utf8' })
    for (const file of files.filter((name) => name.endsWith('.ts'))) {
      const code = readFileSync(`shared/${file}`, 'utf8')
      if (!code.includes('.describe(')) continue
      expect(code, file).toMatch(/from 'zod'|quantityIn|from '[^']*fields/u)
    }
  })
})
