import { writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { getRequestListener } from '@hono/node-server'
import { start } from '../../worker/node/start.ts'
import type { Sent } from './bare-route.ts'

/** A server process of the bench: the service as it runs, or the bare route; prints its address. */
const [which, sent = ''] = process.argv.slice(2)

if (which === 'chargewright') {
  const log = process.platform === 'win32' ? 'NUL' : '/dev/null'
  const { url } = await start({ port: '0' }, (text) => writeFileSync(log, text))
  console.log(url)
} else {
  globalThis.SENT = JSON.parse(sent) as Sent
  const { default: app } = await import('./bare-route.ts')
  const server = createServer(getRequestListener(app.fetch))
  server.listen(0, '127.0.0.1', () => {
    const address = server.address()
    if (typeof address === 'object' && address) console.log(`http://127.0.0.1:${address.port}`)
  })
}
