import { createServer } from 'node:net'
import { expect, it } from 'vitest'
import { served } from './served.ts'

const ASKED = {
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ refrigerant: 'R-407C', pressure: '80 psig' }),
}
const CALLERS = 12

/** A port that was free a moment ago. */
const freePort = () =>
  new Promise<number>((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })

it('a server that is ended while callers ask gives whole answers or none, and can be started again', async () => {
  const port = String(await freePort())
  const start = () => served(process.execPath, ['worker/node/main.ts', '--port', port])
  const first = await start()
  const counts = { whole: 0, refused: 0 }
  let asking = true
  const caller = async () => {
    while (asking) {
      // A connection that is refused is an answer; one that breaks off inside a body would throw below.
      const response = await fetch(`${first.url}/v1/saturation`, ASKED).catch(() => undefined)
      if (response === undefined) {
        counts.refused += 1
        await new Promise((resolve) => setTimeout(resolve, 20))
        continue
      }
      expect(response.status).toBe(200)
      expect(await response.json()).toHaveProperty('result.refrigerant', 'R-407C')
      counts.whole += 1
    }
  }
  const callers = Array.from({ length: CALLERS }, caller)
  const until = async (isSo: () => boolean) => {
    while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 10))
  }
  await until(() => counts.whole > CALLERS)
  expect((await first.end('SIGTERM')).status).toBe(0)
  await until(() => counts.refused > 0)
  const before = counts.whole
  const second = await start()
  await until(() => counts.whole > before + CALLERS)
  asking = false
  await Promise.all(callers)
  expect((await second.end('SIGTERM')).status).toBe(0)
}, 60_000)
