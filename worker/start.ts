import { parseArgs } from 'node:util'
import { start } from './node.ts'

const OPTIONS = {
  host: { type: 'string', default: process.env.HOST ?? '127.0.0.1' },
  port: { type: 'string', default: process.env.PORT ?? '8787' },
  cors: { type: 'string', default: process.env.CORS_ORIGINS ?? '' },
} as const

try {
  const { values } = parseArgs({ options: OPTIONS })
  const port = /^\d{1,5}$/u.test(values.port) ? Number(values.port) : Number.NaN
  if (!(port <= 65535)) {
    throw new Error(`"${values.port}" is no port: it is a number from 0 to 65535.`)
  }
  const { url } = await start({ host: values.host, port, cors: values.cors })
  console.error(`chargewright serves ${url} (stop with Ctrl-C)`)
} catch (error) {
  console.error(`error: ${error instanceof Error ? error.message : String(error)}`)
  console.error('try:   npm start -- --host <address> --port <number> --cors <origins>')
  process.exitCode = 2
}
