import { parseArgs } from 'node:util'
import { start } from './node.ts'

const { values } = parseArgs({
  options: {
    host: { type: 'string', default: process.env.HOST ?? '127.0.0.1' },
    port: { type: 'string', default: process.env.PORT ?? '8787' },
    cors: { type: 'string', default: process.env.CORS_ORIGINS ?? '' },
  },
})
const port = /^\d{1,5}$/u.test(values.port) ? Number(values.port) : Number.NaN

if (port <= 65535) {
  const { url } = await start({ host: values.host, port, cors: values.cors })
  console.error(`chargewright serves ${url} (stop with Ctrl-C)`)
} else {
  console.error(`error: "${values.port}" is no port: it is a number from 0 to 65535.`)
  process.exitCode = 2
}
