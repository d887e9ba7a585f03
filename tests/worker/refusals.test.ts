import { describe, expect, it, vi } from 'vitest'
import { ERROR_CODES } from '../../shared/errors.ts'
import { operation, operations } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { originsOf } from '../../worker/origins.ts'
import { statusOf, titleOf } from '../../worker/problem.ts'
import { BODY_LIMIT } from '../../worker/settings.ts'
import { ask, post, problemOf } from './ask.ts'

const R134A = { refrigerant: 'R-134a' }
const refuse = async (body: unknown) => {
  const response = await post('saturation', JSON.stringify(body))
  const { status, code, path } = await problemOf(response)
  return { status, code, path }
}

describe('every code', () => {
  it('has a status and a title', () => {
    expect(Object.keys(statusOf).sort()).toEqual([...ERROR_CODES].sort())
    expect(Object.keys(titleOf).sort()).toEqual([...ERROR_CODES].sort())
  })
})

describe('a body', () => {
  it('that is empty is missing', async () => {
    for (const body of [null, '', '  \n']) {
      expect(await problemOf(await post('saturation', body))).toEqual(
        expect.objectContaining({ status: 400, code: 'missing-input' }),
      )
    }
  })

  it('that breaks off is no JSON', async () => {
    for (const body of [
      '{',
      '{"refrigerant": "R-134a",}',
      "{'a': 1}",
      'NaN',
      '\u0000',
      '{"a":1}{"b":2}',
    ]) {
      expect(await problemOf(await post('saturation', body))).toEqual(
        expect.objectContaining({ status: 400, code: 'bad-input' }),
      )
    }
  })

  it('that is no object does not fit', async () => {
    for (const body of ['null', '5', '"text"', '[]', 'true']) {
      expect(await problemOf(await post('saturation', body))).toEqual(
        expect.objectContaining({ status: 400 }),
      )
    }
  })

  it('of 2 MB is too large, whether or not its length is told', async () => {
    const text = JSON.stringify({ refrigerant: 'x'.repeat(2 * 1024 * 1024) })
    expect(await problemOf(await post('saturation', text))).toEqual(
      expect.objectContaining({ status: 413, code: 'body-too-large' }),
    )
    const stream = new Response(text).body
    expect((await post('saturation', stream)).status).toBe(413)
  })

  it('just under the limit is still read', async () => {
    const filler = 'x'.repeat(BODY_LIMIT - 100)
    expect((await post('saturation', JSON.stringify({ refrigerant: filler }))).status).not.toBe(413)
  })

  it('nested a hundred thousand deep is refused like any other', async () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`
    expect((await post('saturation', deep)).status).toBe(400)
    expect((await post('saturation/batch', deep)).status).toBe(200)
    expect((await post('saturation', `{"refrigerant":"R-134a","pressure":${deep}}`)).status).toBe(
      400,
    )
  })

  it.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/jsonx',
    '',
  ])('of type "%s" is not read', async (type) => {
    const headers: Record<string, string> = type === '' ? {} : { 'content-type': type }
    const response = await post('saturation', new TextEncoder().encode('{}'), headers)
    expect(response.headers.get('accept')).toBe('application/json')
    expect(await problemOf(response)).toEqual(
      expect.objectContaining({ status: 415, code: 'not-json' }),
    )
  })

  it.each(['utf-16', '"ISO-8859-1"', 'utf-7'])('in %s is not read', async (charset) => {
    const type = { 'content-type': `application/json; charset=${charset}` }
    expect(await problemOf(await post('saturation', '{}', type))).toEqual(
      expect.objectContaining({ status: 415, code: 'other-charset' }),
    )
  })

  it('that is compressed is not read, and is told how to come', async () => {
    const body = JSON.stringify({ ...R134A, pressure: '32 psig' })
    const zipped = await new Response(
      new Response(body).body?.pipeThrough(new CompressionStream('gzip')),
    ).arrayBuffer()
    const json = { 'content-type': 'application/json' }
    const response = await post('saturation', zipped, { ...json, 'content-encoding': 'gzip' })
    expect(response.headers.get('accept-encoding')).toBe('identity')
    expect(await problemOf(response)).toEqual(
      expect.objectContaining({ status: 415, code: 'encoded-body' }),
    )
    const plain = await post('saturation', body, { ...json, 'content-encoding': 'identity' })
    expect(plain.status).toBe(200)
  })

  it.each([
    'application/json; charset=utf-8',
    'application/json;charset="UTF-8"',
    'application/json; charset=us-ascii',
    'Application/JSON',
    'application/merge-patch+json',
  ])('of type "%s" is read', async (type) => {
    const body = JSON.stringify({ ...R134A, pressure: '32 psig' })
    expect((await post('saturation', body, { 'content-type': type })).status).toBe(200)
  })
})

describe('an input', () => {
  it('with an unknown field names it and the nearest', async () => {
    const response = await post('saturation', JSON.stringify({ ...R134A, presure: '32 psig' }))
    expect(await problemOf(response)).toEqual(
      expect.objectContaining({
        status: 400,
        path: ['presure'],
        hint: expect.stringContaining('pressure'),
      }),
    )
  })

  it('with names that JavaScript knows is refused like any other', async () => {
    for (const name of ['__proto__', 'constructor', 'toString']) {
      const body = `{"refrigerant":"R-134a","pressure":"32 psig","${name}":{"polluted":true}}`
      const status = (await post('saturation', body)).status
      expect(status, name).toBe(400)
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
    expect(
      (await post('saturation', JSON.stringify({ refrigerant: '__proto__', pressure: '1 psig' })))
        .status,
    ).toBe(404)
  })

  it.each([
    ['a number without its unit', 32, 400, 'ambiguous-quantity'],
    ['a text without its unit', '32', 400, 'ambiguous-quantity'],
    ['gauge or absolute unsaid', '32 psi', 400, 'ambiguous-quantity'],
    ['a unit of another kind', '32 °F', 400, 'wrong-kind'],
    ['digits of another script', '٣٢ psig', 400, 'bad-quantity'],
    ['digits of full width', '３２ psig', 400, 'bad-quantity'],
    ['the text NaN', 'NaN psig', 400, 'bad-quantity'],
    ['the text Infinity', 'Infinity psig', 400, 'bad-quantity'],
    ['more digits than a number has', `${'9'.repeat(70)}e999 psig`, 400, 'bad-quantity'],
    ['a very long text', `${'1'.repeat(5000)} psig`, 400, 'bad-quantity'],
    ['a comma', '2,2 bar g', 400, 'bad-quantity'],
    ['null', null, 400, 'bad-quantity'],
    ['a list', ['32 psig'], 400, 'bad-quantity'],
    ['an object that is none', { value: 32 }, 400, 'bad-quantity'],
    ['a value in text', { value: '32', unit: 'psig' }, 400, 'bad-quantity'],
    [
      'an uncertainty below nothing',
      { value: 32, unit: 'psig', plusMinus: -1 },
      400,
      'bad-quantity',
    ],
    ['nothing at all', '0 psia', 422, 'out-of-range'],
    ['less than nothing', '-5 psia', 422, 'out-of-range'],
    ['above the critical point', '900 psia', 422, 'above-critical'],
  ])('whose pressure is %s', async (_, pressure, status, code) => {
    expect(await refuse({ ...R134A, pressure })).toEqual(
      expect.objectContaining({ status, code, path: ['pressure'] }),
    )
  })

  it('reads the minus signs that people type', async () => {
    const typed = await post('saturation', JSON.stringify({ ...R134A, temperature: '−10 °C' }))
    const plain = await post('saturation', JSON.stringify({ ...R134A, temperature: '-10 °C' }))
    expect(typed.status).toBe(200)
    expect(await typed.json()).toEqual(await plain.json())
  })

  it.each([
    ['0 K', 422, 'out-of-range'],
    ['-500 °F', 422, 'out-of-range'],
    ['150 °C', 422, 'above-critical'],
  ])('whose temperature is %s', async (temperature, status, code) => {
    expect(await refuse({ ...R134A, temperature })).toEqual(
      expect.objectContaining({ status, code }),
    )
  })

  it('below the triple point says so', async () => {
    expect(await refuse({ refrigerant: 'R-744', temperature: '-80 °C' })).toEqual(
      expect.objectContaining({ status: 422, code: 'below-triple' }),
    )
  })

  it('with letters that act instead of being seen gets them back written out', async () => {
    const name = 'R\u001b[2J\u202e\u009b31m'
    const { example } = operation('work-order')
    const named = (to: string) => ({
      ...example,
      machine: { ...(example.machine as object), name: to },
    })
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    const acts = /[\u0000-\u001F\u007F-\u009F\u202A-\u202E]/u
    for (const [operation, body] of [
      ['saturation', { refrigerant: name, pressure: '32 psig' }],
      ['work-order', named(name)],
      ['work-order', { [name]: 1 }],
    ] as const) {
      for (const text of [
        JSON.stringify(body),
        JSON.stringify(body).replaceAll('\\u009b', '\u009b'),
      ]) {
        const back = await (await post(operation, text)).text()
        expect(back).toContain('R\\u001b')
        expect(back).not.toMatch(acts)
      }
    }
    const byQuery = await ask(`/v1/refrigerants/${encodeURIComponent(name)}/saturation?pressure=1`)
    expect(await byQuery.text()).not.toMatch(acts)
  })

  it('whose object has a name twice says which', async () => {
    const twice = await post(
      'saturation',
      '{"refrigerant":"R-134a","pressure":"1 psig","pressure":"2 psig"}',
    )
    expect(await problemOf(twice)).toEqual(
      expect.objectContaining({ status: 400, path: ['pressure'] }),
    )
  })

  it('for an unknown refrigerant gets the nearest', async () => {
    const response = await post(
      'saturation',
      JSON.stringify({ refrigerant: 'R-134z', pressure: '32 psig' }),
    )
    expect(await problemOf(response)).toEqual(
      expect.objectContaining({
        status: 404,
        code: 'unknown-refrigerant',
        hint: expect.stringContaining('R-134a'),
      }),
    )
  })
})

describe('an address', () => {
  it('that there is not says so, with the nearest', async () => {
    expect(await problemOf(await post('saturatoin', '{}'))).toEqual(
      expect.objectContaining({
        status: 404,
        code: 'not-found',
        hint: expect.stringContaining('/v1/saturation'),
      }),
    )
    expect((await problemOf(await ask('/v2/saturation'))).status).toBe(404)
    expect((await problemOf(await ask('/v1/refrigerants/R-13x'))).code).toBe('unknown-refrigerant')
    expect((await problemOf(await ask('/v1/refrigerants/%E0%A4%A'))).status).toBe(404)
  })

  it.each([
    ['PUT', '/v1/saturation', 'POST'],
    ['GET', '/v1/saturation', 'POST'],
    ['DELETE', '/v1/table', 'GET, HEAD, POST'],
    ['POST', '/v1/refrigerants', 'GET, HEAD'],
    ['POST', '/openapi.json', 'GET, HEAD'],
  ])('refuses %s %s and says what it takes', async (method, address, allow) => {
    const response = await ask(address, { method })
    expect(response.headers.get('allow')).toBe(allow)
    expect(await problemOf(response)).toEqual(
      expect.objectContaining({ status: 405, code: 'method-not-allowed' }),
    )
  })

  it('tells OPTIONS what it takes', async () => {
    const response = await ask('/v1/saturation', { method: 'OPTIONS' })
    expect([response.status, response.headers.get('allow')]).toEqual([204, 'POST'])
    expect(response.headers.get('content-type')).toBeNull()
  })

  it.each([
    '/v1/',
    '/v1/operations/',
    '/v1/refrigerants/',
    '/v1/refrigerants/R-22/',
    '/v1/table/',
    '/reference/',
    '/healthz/',
  ])('has nothing at %s, and says that no address ends with a slash', async (address) => {
    const { status, hint } = await problemOf(await ask(address))
    expect(status).toBe(404)
    expect(hint).toContain(`ends with a slash: ${address.slice(0, -1)}.`)
  })

  it('has no operation behind a slash either', async () => {
    expect((await problemOf(await post('saturation/', '{}'))).status).toBe(404)
  })

  it('refuses a query that is none', async () => {
    const from = '/v1/refrigerants/R-134a/saturation'
    expect((await problemOf(await ask(`${from}?presure=32+psig`))).path).toEqual(['presure'])
    expect((await problemOf(await ask(`${from}?pressure=1+psig&pressure=2+psig`))).status).toBe(400)
    expect((await problemOf(await ask(`${from}?pressure=`))).status).toBe(400)
    expect((await problemOf(await ask(from))).status).toBe(400)
    expect((await problemOf(await ask(`${from}?refrigerant=R-22&pressure=1+psig`))).status).toBe(
      400,
    )
    expect((await problemOf(await ask('/v1/table?format=xml'))).path).toEqual(['format'])
  })
})

describe('settings', () => {
  const web = (origin: string, settings: object, method = 'GET') =>
    createApp().request('/v1/operations', { method, headers: { origin } }, settings)

  it('let web pages of the set origins in, and no others', async () => {
    const settings = { CORS_ORIGINS: 'https://shop.example, https://yard.example' }
    const let_in = await web('https://yard.example', settings)
    expect(let_in.headers.get('access-control-allow-origin')).toBe('https://yard.example')
    const kept_out = await web('https://elsewhere.example', settings)
    expect(kept_out.headers.get('access-control-allow-origin')).toBeNull()
    const any = await web('https://elsewhere.example', { CORS_ORIGINS: '*' })
    expect(any.headers.get('access-control-allow-origin')).toBe('*')
    const asked = await web('https://yard.example', settings, 'OPTIONS')
    expect(asked.status).toBe(204)
    expect(asked.headers.get('access-control-allow-methods')).toContain('POST')
  })

  it.each([
    ['shop2.example', 'is no origin'],
    ['https://shop.example/', 'browsers send that origin as https://shop.example'],
    ['https://Shop.example:443', 'browsers send that origin as https://shop.example'],
    ['ftp://shop.example', 'is no origin'],
    ['null', 'is no origin'],
  ])('refuse the origin %s, which would never match', (origin, message) => {
    expect(() => originsOf(`https://yard.example,${origin}`)).toThrow(message)
  })

  it('let nobody in by an origin that would never match, and say so in the log', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {})
    const response = await web('https://shop.example', { CORS_ORIGINS: 'https://shop.example/' })
    expect(response.headers.get('access-control-allow-origin')).toBeNull()
    expect(log).toHaveBeenCalledWith(expect.stringContaining('would never match'))
    log.mockRestore()
  })

  it('ask the edge’s limiter where there is one', async () => {
    const limiter = (success: boolean) => ({ RATE_LIMITER: { limit: async () => ({ success }) } })
    expect((await web('x', limiter(true))).status).toBe(200)
    const refused = await web('x', limiter(false))
    expect(refused.headers.get('retry-after')).toBe('60')
    expect(await problemOf(refused)).toEqual(
      expect.objectContaining({ status: 429, code: 'too-many-requests' }),
    )
  })
})

describe('a fault of the service', () => {
  it('says so and nothing else, and keeps the rest for whoever runs it', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {})
    const [first] = operations
    if (!first) throw new Error('no operation')
    const broken = {
      ...first,
      name: 'broken',
      unshown: () => {
        throw new TypeError('secret inner workings')
      },
    }
    const response = await createApp({ operations: [broken] }).request('/v1/broken', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    })
    const text = await response.text()
    expect(response.status).toBe(500)
    expect(log).toHaveBeenCalledWith(expect.any(TypeError))
    log.mockRestore()
    expect(text).toContain('"code":"internal"')
    expect(text).not.toMatch(/secret|TypeError|\.ts/u)
  })
})
