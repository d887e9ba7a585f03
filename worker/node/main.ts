import { parseArgs } from 'node:util'
import { SettingError } from './settings.ts'
import { start } from './start.ts'

const text = { type: 'string' } as const
const OPTIONS = {
  host: text,
  port: text,
  cors: text,
  'tls-cert': text,
  'tls-key': text,
  'stop-within': text,
} as const

try {
  const { values } = parseArgs({ options: OPTIONS })
  const { url } = await start({
    ...values,
    tlsCert: values['tls-cert'],
    tlsKey: values['tls-key'],
    stopWithin: values['stop-within'],
  })
  console.error(`chargewright serves ${url} (stop with Ctrl-C)`)
} catch (error) {
  console.error(`error: ${error instanceof Error ? error.message : String(error)}`)
  console.error(
    `try:   ${error instanceof SettingError ? error.hint : 'npm start -- --host <address> --port <number> --cors <origins> --tls-cert <file> --tls-key <file> --stop-within <seconds>'}`,
  )
  process.exitCode = 2
}
