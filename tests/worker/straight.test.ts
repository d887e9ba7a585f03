import { describe, expect, it, vi } from 'vitest'
import { operation } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { BODY_LIMIT, type Settings } from '../../worker/settings.ts'
import type { HeadersOf } from '../../worker/straight.ts'
import { problemOf } from './ask.ts'

const saturation = operation('saturation')
const BODY = JSON.stringify(saturation.example)
const PLAIN = { 'content-type': 'application/json' }

const send = (body: string, headers: Record<string, string>, settings: Settings = {}) => {
  // What lies around the routes counts who comes by them.
  const around = vi.fn((_: unknown, next: () => Promise<void>) => next())
  const app = createApp({ around: [around] })
  const init = { method: 'POST', headers, body }
  return { around, response: Promise.resolve(app.request('/v1/saturation', init, settings)) }
}
const sized = (body: string) => ({
  ...PLAIN,
  'content-length': String(new TextEncoder().encode(body).length),
})
const seen = async (response: Response) => ({
  status: response.status,
  headers: [...response.headers].toSorted(),
  text: await response.text(),
})

describe('a plain input to one operation', () => {
  it('goes straight to its answer, which is that of the routes', async () => {
    const straight = send(BODY, sized(BODY))
    const routed = send(BODY, { ...PLAIN, 'content-type': 'application/json; charset=utf-8' })
    const answer = await seen(await straight.response)
    expect(answer).toEqual(await seen(await routed.response))
    expect(answer.text).toBe(JSON.stringify(saturation.run(saturation.example)))
    expect(straight.around).not.toHaveBeenCalled()
    expect(routed.around).toHaveBeenCalledOnce()
  })

  it.each([
    ['nothing', ''],
    ['no JSON', '{"refrigerant":'],
    ['a list', '[]'],
    ['what is unknown', '{"refrigerant":"R-999","pressure":"32 psig"}'],
    ['letters that are not seen', '{"refrigerant":"R-134a","pressure":"32\\u202e psig"}'],
    ['one name twice', '{"pressure":"32 psig","pressure":"33 psig"}'],
  ])('that holds %s is refused as by the routes', async (_, body) => {
    const straight = send(body, sized(body))
    const routed = send(body, { ...PLAIN, 'content-type': 'application/json; charset=utf-8' })
    const refusal = await seen(await straight.response)
    expect(refusal.status).toBeGreaterThanOrEqual(400)
    expect(refusal).toEqual(await seen(await routed.response))
    expect(straight.around).not.toHaveBeenCalled()
  })

  it.each<[why: string, headers: Record<string, string>, settings: Settings, status: number]>([
    ['too long', { ...PLAIN, 'content-length': String(BODY_LIMIT + 1) }, {}, 413],
    ['of no told length', PLAIN, {}, 200],
    ['of another type', { ...sized(BODY), 'content-type': 'text/plain' }, {}, 415],
    ['compressed', { ...sized(BODY), 'content-encoding': 'gzip' }, {}, 415],
    ['for web pages elsewhere', sized(BODY), { CORS_ORIGINS: 'https://shop.example' }, 200],
  ])('that is %s goes by the routes', async (_, headers, settings, status) => {
    const { around, response } = send(BODY, headers, settings)
    expect((await response).status).toBe(status)
    expect(around).toHaveBeenCalledOnce()
  })

  it('is held to the rate limit', async () => {
    const limit = vi.fn(async () => ({ success: false }))
    const headers = { ...sized(BODY), 'cf-connecting-ip': '192.0.2.7' }
    const { around, response } = send(BODY, headers, { RATE_LIMITER: { limit } })
    expect(await problemOf(await response)).toEqual(
      expect.objectContaining({ status: 429, code: 'too-many-requests' }),
    )
    expect(limit).toHaveBeenCalledWith({ key: '192.0.2.7' })
    expect(around).not.toHaveBeenCalled()
  })

  it('gets the headers that its server tells, or goes by the routes where it tells none', async () => {
    const headersOf: HeadersOf = ({ headers }, usual) =>
      headers.get('accept-encoding') === null ? { ...usual, 'x-told': 'here' } : undefined
    const app = createApp({ headersOf })
    const ask = (more: Record<string, string>) =>
      app.request('/v1/saturation', {
        method: 'POST',
        headers: { ...sized(BODY), ...more },
        body: BODY,
      })
    expect((await ask({})).headers.get('x-told')).toBe('here')
    expect((await ask({ 'accept-encoding': 'gzip' })).headers.get('x-told')).toBeNull()
  })
})

describe('saturation by a query', () => {
  const get = (query: string, headers: Record<string, string> = {}, id = 'R-134a') => {
    const around = vi.fn((_: unknown, next: () => Promise<void>) => next())
    const app = createApp({ around: [around] })
    const address = `http://shop.test/v1/refrigerants/${id}/saturation${query}`
    return {
      around,
      straight: Promise.resolve(app.request(address, { headers }, { BUILD: 'a' })),
      // Where pages elsewhere may ask, all go by the routes; without an origin nothing else differs.
      routed: Promise.resolve(
        app.request(address, { headers }, { BUILD: 'a', CORS_ORIGINS: 'https://shop.example' }),
      ),
    }
  }
  const withoutOrigin = async (response: Response) => {
    const { headers, ...rest } = await seen(response)
    return { ...rest, headers: headers.filter(([name]) => !/^(?:vary|access-)/u.test(name)) }
  }

  it.each([
    '?pressure=32%20psig',
    '?pressure=32+psig&altitude=1200%20ft&units=si',
    '?temperature=5%20%C2%B0C&precise=yes',
    '?pressure=32%20psig&pressure=33%20psig',
    '?pressure=32',
    '?presure=32%20psig',
    '?pressure=',
    '',
    '?',
    '?pressure=32%20psig%E2%80%AE',
  ])('at "%s" goes straight to the answer of the routes, with its tag', async (query) => {
    const { around, straight, routed } = get(query)
    const answer = await withoutOrigin(await straight)
    expect(around).toHaveBeenCalledOnce()
    expect(answer).toEqual(await withoutOrigin(await routed))
    expect(around).toHaveBeenCalledOnce()
  })

  it('goes by the routes where its address needs care', async () => {
    for (const query of ['?pressure=%', '?pressure=32%20psig=', '?__proto__=1', '?pressure=%FF']) {
      const { around, straight } = get(query)
      expect((await straight).status).toBeGreaterThanOrEqual(400)
      expect(around).toHaveBeenCalledTimes(2)
    }
    const unknown = get('?pressure=32%20psig', {}, 'HFC%2D134a')
    expect((await unknown.straight).status).toBe(200)
    expect(unknown.around).toHaveBeenCalledTimes(2)
  })

  it('costs no calculation where its answer is known', async () => {
    const first = await get('?pressure=32%20psig').straight
    const tag = first.headers.get('etag') ?? ''
    const again = get('?pressure=32%20psig', { 'if-none-match': `"x", ${tag}` })
    const answer = await withoutOrigin(await again.straight)
    expect([answer.status, answer.text]).toEqual([304, ''])
    expect(answer).toEqual(await withoutOrigin(await again.routed))
    expect((await get('?pressure=33%20psig', { 'if-none-match': tag }).straight).status).toBe(200)
  })
})
