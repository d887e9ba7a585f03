import { request } from 'node:http'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Served, served } from './served.ts'

const PLAIN = 'application/json'
/** Said at more length it is the same type, and such a request goes by the routes. */
const ROUTED = 'application/json; charset=utf-8'
const QUERY = '/v1/refrigerants/R-134a/saturation?pressure=32%20psig'

interface Heard {
  readonly status: number | undefined
  readonly headers: readonly (readonly [string, unknown])[]
  readonly text: string
}

describe('a plain request to a server of one’s own', () => {
  let server: Served
  beforeAll(async () => {
    server = await served(process.execPath, ['worker/node/main.ts', '--port', '0'])
  })
  afterAll(async () => {
    await server.end()
  })

  const ask = (path: string, headers: Record<string, string>, body?: string | Buffer) =>
    new Promise<Heard>((resolve, reject) => {
      const method = body === undefined ? 'GET' : 'POST'
      const length = body === undefined ? {} : { 'content-length': Buffer.byteLength(body) }
      const sent = request(
        `${server.url}${path}`,
        { method, headers: { ...length, ...headers } },
        (answer) => {
          let text = ''
          answer.setEncoding('utf8').on('data', (chunk) => {
            text += chunk
          })
          answer.on('end', () => {
            const { date: _, ...told } = answer.headers
            resolve({ status: answer.statusCode, headers: Object.entries(told).toSorted(), text })
          })
        },
      )
      sent.on('error', reject)
      sent.end(body)
    })

  it.each([
    ['a good input', '{"refrigerant":"R-134a","pressure":"32 psig"}', 200],
    ['a mark of the byte order', '\ufeff{"refrigerant":"R-134a","pressure":"32 psig"}', 200],
    ['letters of two bytes', '{"refrigerant":"R-134a","temperature":"5 °C"}', 200],
    ['no UTF-8', Buffer.from('{"refrigerant":"R-134a","pressure":"32 \xffpsig"}', 'latin1'), 400],
    ['nothing that is known', '{"refrigerant":"R-999","pressure":"32 psig"}', 404],
    ['no JSON', '{', 400],
  ] as const)('with %s is answered as by the routes, to whoever asks', async (_, body, status) => {
    for (const host of ['127.0.0.1', 'shop.test']) {
      const straight = await ask('/v1/saturation', { host, 'content-type': PLAIN }, body)
      const routed = await ask('/v1/saturation', { host, 'content-type': ROUTED }, body)
      expect(straight.status).toBe(status)
      expect(straight).toEqual(routed)
    }
  })

  it('by address has a tag, by which it is known again', async () => {
    const first = await ask(QUERY, { host: 'shop.test' })
    const tag = Object.fromEntries(first.headers).etag as string
    const { status, headers, text } = await ask(QUERY, {
      host: 'shop.test',
      'if-none-match': tag,
    })
    expect([first.status, status, text]).toEqual([200, 304, ''])
    expect(Object.fromEntries(headers)).toMatchObject({ etag: tag, vary: 'Accept-Encoding' })
  })

  it('is answered with its own answer, however many come at once', async () => {
    const pressures = Array.from({ length: 60 }, (_, index) => index + 20)
    const texts = await Promise.all(
      pressures.map((psig) =>
        ask(
          '/v1/saturation',
          { 'content-type': PLAIN },
          JSON.stringify({ refrigerant: 'R-134a', pressure: `${psig} psig` }),
        ),
      ),
    )
    for (const [index, { text }] of texts.entries()) {
      expect(JSON.parse(text).result.dew.gaugePressure.value).toBe(pressures[index])
    }
  })
})
