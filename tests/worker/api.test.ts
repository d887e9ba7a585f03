import { describe, expect, it } from 'vitest'
import { ABOUT } from '../../shared/about.ts'
import { ERROR_CODES } from '../../shared/errors.ts'
import { operation, operations } from '../../shared/operations.ts'
import { refrigerants } from '../../shared/refrigerant/index.ts'
import { createApp } from '../../worker/app.ts'
import { withHost } from '../../worker/pages/host.ts'
import { PROBLEM_CODES } from '../../worker/pages/problems.ts'
import { DOOR_PROBLEMS } from '../../worker/problem.ts'
import { ask, post, problemOf } from './ask.ts'

describe('the service', () => {
  it('runs inside workerd', async () => {
    expect(navigator.userAgent).toBe('Cloudflare-Workers')
    const health = await ask('/healthz')
    expect(await health.json()).toEqual({ status: 'ok', version: ABOUT.version })
    expect(health.headers.get('cache-control')).toBe('no-store')
  })

  it.each(['/', '/healthz', '/reference', '/v1/operations', '/v1/saturation', '/nowhere'])(
    'says at %s which version answers, and lets no page frame or guess it',
    async (address) => {
      const { headers } = await ask(address)
      expect(headers.get('x-chargewright-version')).toBe(ABOUT.version)
      expect(headers.get('content-security-policy')).toContain("default-src 'none'")
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('x-frame-options')).toBe('DENY')
    },
  )

  it('lists what can be asked, with examples', async () => {
    const list = (await (await ask('/v1/operations')).json()) as { operations: unknown[] }
    expect(list.operations).toHaveLength(operations.length)
    expect(list.operations[0]).toEqual(
      expect.objectContaining({
        name: 'saturation',
        address: '/v1/saturation',
        example: operation('saturation').example,
      }),
    )
  })
})

describe.each(operations.map((entry) => [entry.name, entry] as const))(
  'POST /v1/%s',
  (name, entry) => {
    it('answers the example as the operation itself does', async () => {
      const response = await post(name, JSON.stringify(entry.example))
      expect(response.status).toBe(200)
      expect(response.headers.get('content-type')).toMatch(/^application\/json/u)
      expect(response.headers.get('cache-control')).toBe('no-store')
      expect(await response.json()).toEqual(entry.run(entry.example))
    })
  },
)

describe('GET /v1/refrigerants', () => {
  it('lists all, and gives one by any of its names', async () => {
    expect(await (await ask('/v1/refrigerants')).json()).toEqual({ refrigerants: refrigerants() })
    const one = await (await ask('/v1/refrigerants/hfc-134A')).json()
    expect(one).toEqual(refrigerants().find(({ id }) => id === 'R-134a'))
    expect((await ask('/v1/refrigerants/R-1234ze(E)')).status).toBe(200)
  })

  it('gives saturation by query as by body', async () => {
    const byQuery = await ask(
      '/v1/refrigerants/134a/saturation?pressure=32+psig&altitude=2500%20ft&units=si&precise=yes',
    )
    expect(byQuery.status).toBe(200)
    expect(await byQuery.json()).toEqual(
      operation('saturation').run({
        refrigerant: 'R-134a',
        pressure: '32 psig',
        altitude: '2500 ft',
        units: 'si',
        precise: true,
      }),
    )
  })
})

describe('GET /v1/table', () => {
  const query = 'refrigerant=R-134a&from=0+%C2%B0F&to=40+%C2%B0F&step=10+%C2%B0F&units=us'

  it('is JSON, CSV or text, by format or by what the caller accepts', async () => {
    const json = await ask(`/v1/table?${query}`)
    expect(((await json.json()) as { result: { rows: unknown[] } }).result.rows).toHaveLength(5)
    const csv = await ask(`/v1/table?${query}&format=csv`)
    expect(csv.headers.get('content-type')).toMatch(/^text\/csv/u)
    const lines = (await csv.text()).trimEnd().split('\r\n')
    expect(lines).toHaveLength(6)
    expect(lines[0]).toMatch(/^temperature \(°F\)/u)
    const accepted = await ask(`/v1/table?${query}`, { headers: { accept: 'text/csv' } })
    expect(accepted.headers.get('vary')).toContain('Accept')
    expect((await accepted.text()).trimEnd().split('\r\n')).toEqual(lines)
    const text = await ask(`/v1/table?${query}&format=text`)
    expect(text.headers.get('content-type')).toMatch(/^text\/plain/u)
  })
})

describe('answers to GET', () => {
  const address = '/v1/refrigerants/R-134a/saturation?pressure=32+psig'

  it('carry a tag, are asked for again before each use, and are not sent twice', async () => {
    const first = await ask(address)
    const tag = first.headers.get('etag') ?? ''
    expect(tag).toMatch(/^W\/"[\w.-]+"$/u)
    expect(first.headers.get('cache-control')).toBe('public, no-cache')
    for (const known of [tag, `"other", ${tag}`]) {
      const again = await ask(address, { headers: { 'if-none-match': known } })
      expect(again.status).toBe(304)
      expect(await again.text()).toBe('')
      expect(again.headers.get('etag')).toBe(tag)
    }
    for (const known of ['"other"', '*', '']) {
      expect((await ask(address, { headers: { 'if-none-match': known } })).status).toBe(200)
    }
    const other = await ask(`${address}&units=si`)
    expect(other.headers.get('etag')).not.toBe(tag)
  })

  it('never outlive an upgrade', async () => {
    const answered = async (BUILD: string, known = '') =>
      createApp().request(address, { headers: { 'if-none-match': known } }, { BUILD })
    const tag = (await answered('monday')).headers.get('etag') ?? ''
    expect((await answered('monday', tag)).status).toBe(304)
    expect((await answered('tuesday', tag)).status).toBe(200)
  })

  it('that refuse are nobody’s to keep', async () => {
    const refused = await ask('/v1/refrigerants/R-134a/saturation?pressure=900+psia')
    expect(refused.status).toBe(422)
    expect(refused.headers.get('etag')).toBeNull()
    expect(refused.headers.get('cache-control')).toBe('no-store')
  })

  it('are for HEAD the same without the body', async () => {
    const get = await ask('/v1/refrigerants/R-22')
    const head = await ask('/v1/refrigerants/R-22', { method: 'HEAD' })
    expect(head.status).toBe(200)
    expect(head.headers.get('etag')).toBe(get.headers.get('etag'))
    expect(await head.text()).toBe('')
  })
})

describe('the pages', () => {
  it.each(['/', '/reference'])(
    '%s stands alone: no script, nothing from elsewhere',
    async (address) => {
      const response = await ask(address)
      const html = await response.text()
      expect(response.headers.get('content-type')).toMatch(/^text\/html/u)
      expect(html).not.toMatch(/<script|src="?https?:|href="?https?:\/\/[^"]*\.(?:css|js)/u)
      if (address === '/') return
      for (const { name } of operations) expect(html).toContain(`#${name}`)
    },
  )

  it('link only to what there is', async () => {
    const html = (await (await ask('/')).text()) + (await (await ask('/reference')).text())
    const local = [...html.matchAll(/href="(\/[^"#]*)/gu)].flatMap(([, address]) => address ?? [])
    expect(local.length).toBeGreaterThan(3)
    for (const address of new Set(local)) expect((await ask(address)).status, address).toBe(200)
  })

  it('fold away what is answered, and name types in words', async () => {
    const html = await (await ask('/reference')).text()
    expect(html.match(/<details><summary>Answer of [\w-]+: \d+/gu)?.length).toBeGreaterThan(
      operations.length,
    )
    expect(html).not.toMatch(/<td>(?:string|array|boolean)<\/td>/u)
  })

  it('say first what to send', async () => {
    const html = await (await ask('/reference')).text()
    const section = /<section id="saturation"[\s\S]*?<\/section>/u.exec(html)?.[0] ?? ''
    const order = ['Fields of saturation', 'Example', 'Answer of saturation', 'What it is for']
    const found = order.map((text) => section.indexOf(text))
    expect(found).toEqual(found.toSorted((a, b) => a - b))
    expect(found).not.toContain(-1)
  })

  it('name in their requests the host that was asked, and let nothing in by it', async () => {
    const html = await (await ask('/reference')).text()
    expect(html).toContain('curl -X POST http://shop.test/v1/saturation')
    expect(html).not.toContain('service.invalid')
    const behind = await ask('/reference', { headers: { 'x-forwarded-proto': 'https' } })
    expect(await behind.text()).toContain('curl -X POST https://shop.test/v1/saturation')
    const page = await (await ask('/reference')).text()
    expect(withHost(page, "http://a'b/reference", undefined)).toBe(page)
    expect(withHost(page, 'http://shop.test/', '"><script>')).toBe(page)
  })

  it('have a picture of their own', async () => {
    for (const address of ['/favicon.svg', '/favicon.ico']) {
      expect((await ask(address)).headers.get('content-type')).toBe('image/svg+xml')
    }
  })

  it('explain every code of a problem where its type leads', async () => {
    const { type } = await problemOf(await post('saturation', '{}'))
    expect(type).toBe('/problems/missing-input')
    expect([...PROBLEM_CODES].sort()).toEqual(
      [...ERROR_CODES, ...Object.keys(DOOR_PROBLEMS)].sort(),
    )
    for (const code of PROBLEM_CODES) {
      const page = await ask(`/problems/${code}`)
      expect(page.status).toBe(200)
      expect((await page.text()).match(/<p>[^<]{30,}<\/p>/u), code).not.toBeNull()
    }
    for (const code of ['nothing', 'constructor', '__proto__']) {
      expect((await ask(`/problems/${code}`)).status).toBe(404)
    }
  })
})

describe('calls from web pages of elsewhere', () => {
  it('are not let in unless it is set so', async () => {
    const response = await ask('/v1/operations', {
      headers: { origin: 'https://elsewhere.example' },
    })
    expect(response.headers.get('access-control-allow-origin')).toBeNull()
  })
})
