import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { type IncomingMessage, request } from 'node:http'
import { get } from 'node:https'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ABOUT } from '../../shared/about.ts'
import { type Served, served } from './served.ts'

const MAIN = 'worker/node/main.ts'
const node = (...args: readonly string[]) =>
  served(process.execPath, [MAIN, '--port', '0', ...args])
const until = async (met: () => boolean) => {
  for (let tries = 0; tries < 100 && !met(); tries += 1) await wait(20)
  expect(met()).toBe(true)
}
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** Sends bytes as they are and gives all that comes back until the server closes. */
function raw(url: string, text: string): Promise<string> {
  const { hostname, port } = new URL(url)
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => socket.write(text))
    let back = ''
    socket.on('data', (chunk) => {
      back += String(chunk)
    })
    socket.on('close', () => resolve(back))
    socket.on('error', reject)
  })
}

describe('a server of one’s own', () => {
  let server: Served
  beforeAll(async () => {
    server = await node()
  })
  afterAll(async () => {
    await server.end()
  })

  it('writes a line a request: when, how, where, what came of it, how long', async () => {
    await fetch(`${server.url}/v1/refrigerants/R-22?secret=yes`)
    await fetch(`${server.url}/v1/saturation`, { method: 'POST', body: '{}' })
    await until(() => server.log().includes('/v1/saturation'))
    const when = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z /u
    const lines = server
      .log()
      .split('\n')
      .filter((line) => when.test(line))
    const plain = lines.map((line) => line.replace(when, ''))
    expect(plain).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^GET \/v1\/refrigerants\/R-22 200 \d+\.\d ms$/u),
        expect.stringMatching(/^POST \/v1\/saturation 415 \d+\.\d ms$/u),
      ]),
    )
    expect(server.log()).not.toContain('secret')
  })

  it('says no more than that of somebody who hangs up, while sending or before the answer', async () => {
    const { hostname, port } = new URL(server.url)
    const half =
      'POST /v1/saturation HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n{"refri'
    for (let round = 0; round < 3; round += 1) {
      const socket = connect(Number(port), hostname, () => socket.write(half))
      socket.on('error', () => {})
      await wait(60)
      socket.resetAndDestroy()
      const reader = connect(Number(port), hostname, () => {
        reader.write('GET /openapi.json HTTP/1.1\r\nHost: x\r\n\r\n')
        reader.once('data', () => reader.resetAndDestroy())
      })
      reader.on('error', () => {})
      await wait(60)
    }
    await until(() => (server.log().match(/POST \/v1\/saturation - /gu)?.length ?? 0) >= 3)
    expect(server.log()).not.toMatch(/\n\s+at |Error|aborted/u)
    expect((await fetch(`${server.url}/healthz`)).status).toBe(200)
  })

  it('refuses what is no request with problem details, as it does all else', async () => {
    const none = await raw(server.url, 'NONSENSE\r\n\r\n')
    expect(none).toMatch(/^HTTP\/1\.1 400 /u)
    expect(none).toContain('"code":"bad-request"')
    expect(none.toLowerCase()).toContain(`x-chargewright-version: ${ABOUT.version}`)
    const long = await raw(
      server.url,
      `GET / HTTP/1.1\r\nHost: x\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`,
    )
    expect(long).toMatch(/^HTTP\/1\.1 431 /u)
    const host = await raw(server.url, 'GET / HTTP/1.1\r\nHost: a b\r\nConnection: close\r\n\r\n')
    expect(host).toMatch(/^HTTP\/1\.1 400 /u)
    expect(host).toContain('"code":"bad-request"')
  })

  it('compresses for whoever reads compressed, and says so to what keeps answers', async () => {
    const { hostname, port } = new URL(server.url)
    const asked = { hostname, port, path: '/reference', headers: { 'accept-encoding': 'gzip' } }
    const [response, body] = await new Promise<[IncomingMessage, Buffer]>((resolve) => {
      request(asked, (answer) => {
        const parts: Buffer[] = []
        answer.on('data', (part: Buffer) => parts.push(part))
        answer.on('end', () => resolve([answer, Buffer.concat(parts)]))
      }).end()
    })
    expect(response.headers['content-encoding']).toBe('gzip')
    expect(response.headers.vary).toContain('Accept-Encoding')
    const plain = await (
      await fetch(`${server.url}/reference`, { headers: { 'accept-encoding': 'identity' } })
    ).text()
    expect(gunzipSync(body).toString()).toBe(plain)
    expect(body.length).toBeLessThan(plain.length / 4)
    const tag = response.headers.etag ?? ''
    const again = await fetch(`${server.url}/reference`, {
      headers: { 'if-none-match': tag, 'accept-encoding': 'gzip' },
    })
    expect(again.status).toBe(304)
  })

  it('packs the description once, for whoever takes it packed', async () => {
    const ask = (encoding: string) =>
      fetch(`${server.url}/openapi.json`, { headers: { 'accept-encoding': encoding } })
    const plain = await ask('identity')
    expect(plain.headers.get('content-encoding')).toBeNull()
    const text = await plain.text()
    for (const encoding of ['gzip', 'br, gzip;q=0.5', 'gzip, deflate']) {
      const packed = await ask(encoding)
      expect(packed.headers.get('content-encoding')).toBe('gzip')
      expect(packed.headers.get('vary')).toBe('Accept-Encoding')
      expect(packed.headers.get('content-type')).toBe('application/json')
      expect(packed.headers.get('etag')).toBe(plain.headers.get('etag'))
      expect(await packed.text()).toBe(text)
    }
    for (const encoding of ['br', 'gzip;q=0', 'gzip;q=0.0, br', 'x-gzip']) {
      expect((await ask(encoding)).headers.get('content-encoding')).toBeNull()
    }
  })
})

describe('a server that is told to end', () => {
  /** Opens a request whose body is only half sent. */
  const slow = (url: string) => {
    const { hostname, port } = new URL(url)
    const length = Buffer.byteLength(BODY)
    const socket = connect(Number(port), hostname, () =>
      socket.write(
        `POST /v1/saturation HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: ${length}\r\n\r\n${BODY.slice(0, 10)}`,
      ),
    )
    let back = ''
    socket.on('data', (chunk) => {
      back += String(chunk)
    })
    socket.on('error', () => {})
    return { socket, back: () => back }
  }
  const BODY = JSON.stringify({ refrigerant: 'R-134a', pressure: '32 psig' })

  it.each(['SIGTERM', 'SIGINT'] as const)(
    'by %s ends with 0 at once when nothing is open',
    async (signal) => {
      const server = await node()
      // A kept connection is no open request.
      await fetch(`${server.url}/healthz`)
      const { status, ms } = await server.end(signal)
      expect(status).toBe(0)
      expect(ms).toBeLessThan(3_000)
    },
  )

  it('still answers what was asked before', async () => {
    const server = await node()
    const { socket, back } = slow(server.url)
    await wait(200)
    const ended = server.end()
    await wait(200)
    socket.write(BODY.slice(10))
    expect((await ended).status).toBe(0)
    expect(back()).toMatch(/^HTTP\/1\.1 200 /u)
    expect(back()).toContain('"result"')
  })

  it('cuts what takes longer than it was given', async () => {
    const server = await node('--stop-within', '1')
    const { socket } = slow(server.url)
    await wait(200)
    const { status, ms } = await server.end()
    expect(status).toBe(0)
    expect(ms).toBeGreaterThan(900)
    expect(ms).toBeLessThan(5_000)
    expect(server.log()).toContain('1 connections were cut after 1 s')
    socket.destroy()
  })

  it('is not left behind by npm', async () => {
    const server = await served('npm', ['start', '--', '--port', '0'])
    await server.end()
    await expect(fetch(`${server.url}/healthz`)).rejects.toThrow()
  })
})

describe('a server with a certificate', () => {
  const folder = mkdtempSync(join(tmpdir(), 'chargewright-tls-'))
  const [cert, key] = [join(folder, 'cert.pem'), join(folder, 'key.pem')]
  beforeAll(() => {
    execFileSync(
      'openssl',
      `req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=shop.example -keyout ${key} -out ${cert}`.split(
        ' ',
      ),
      { stdio: 'ignore' },
    )
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('serves by https, and reads a renewed one when told to', async () => {
    const server = await node('--tls-cert', cert, '--tls-key', key)
    expect(server.url).toMatch(/^https:/u)
    const status = await new Promise((resolve, reject) => {
      get(`${server.url}/healthz`, { rejectUnauthorized: false, agent: false }, (response) => {
        response.resume()
        resolve(response.statusCode)
      }).on('error', reject)
    })
    expect(status).toBe(200)
    server.child.kill('SIGHUP')
    await until(() => server.log().includes('read anew'))
    expect((await server.end()).status).toBe(0)
  })

  it.each([
    ['without its key', () => ['--tls-cert', cert], 'the key (--tls-key) is missing'],
    [
      'that is not there',
      () => ['--tls-cert', 'no.pem', '--tls-key', key],
      'no.pem cannot be read',
    ],
    ['that is none', () => ['--tls-cert', key, '--tls-key', cert], 'no certificate with its key'],
  ])('%s does not start', (_, args, message) => {
    const { status, stderr } = spawnSync(process.execPath, [MAIN, '--port', '0', ...args()], {
      encoding: 'utf8',
    })
    expect([status, stderr]).toEqual([2, expect.stringContaining(message)])
    expect(stderr).not.toMatch(/\n\s+at /u)
  })
})

describe('settings', () => {
  it.each([
    ['--port', '70000', 'is no port'],
    ['--stop-within', 'soon', 'is no time'],
    ['--cors', 'https://shop.example/,shop2.example', 'would never match'],
    ['--host', 'no.such.host.invalid', 'Nothing can listen'],
  ])('%s %s does not start, and is told why', (option, value, message) => {
    const { status, stderr } = spawnSync(process.execPath, [MAIN, option, value], {
      encoding: 'utf8',
    })
    expect([status, stderr]).toEqual([2, expect.stringContaining(message)])
    expect(stderr).toMatch(/\ntry: /u)
  })

  it('come from the environment where no option is given', async () => {
    const server = await served('env', ['HOST=127.0.0.2', 'PORT=0', process.execPath, MAIN])
    expect(server.url).toMatch(/^http:\/\/127\.0\.0\.2:\d+$/u)
    await server.end()
  })
})

describe('time that callers may take', () => {
  it('is bounded for headers: whoever sends none is told and let go', {
    timeout: 30_000,
  }, async () => {
    const server = await node()
    const back = await raw(server.url, 'POST /v1/saturation HTTP/1.1\r\nHost: x\r\n')
    expect(back).toMatch(/^HTTP\/1\.1 408 /u)
    expect(back).toContain('"code":"request-timeout"')
    await server.end()
  })
})
