import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { served } from '../node/served.ts'

export interface Server {
  readonly url: string
  end(): Promise<void>
}

/** The service by Node, as npm start runs it. */
export async function onNode(): Promise<Server> {
  const { url, end } = await served(process.execPath, ['worker/node/main.ts', '--port', '0'])
  return { url, end: async () => void (await end()) }
}

const QUIET = {
  WRANGLER_SEND_METRICS: 'false',
  CI: 'true',
  WRANGLER_HIDE_BANNER: 'true',
  CLOUDFLARE_CF_FETCH_ENABLED: 'false',
}

/** The service in workerd, as npm run dev runs it, with the files of the page in front. */
export async function onWorkerd(): Promise<Server> {
  const child = spawn(
    process.execPath,
    [
      'node_modules/wrangler/bin/wrangler.js',
      ...['dev', '-c', 'worker/wrangler.jsonc', '--port', '0', '--inspector-port', '0'],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'], detached: true, env: { ...process.env, ...QUIET } },
  )
  let text = ''
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk) => {
      text += String(chunk)
    })
  }
  const end = async () => {
    // Of its own group: it starts others.
    if (child.exitCode === null && child.pid !== undefined) process.kill(-child.pid, 'SIGTERM')
    if (child.exitCode === null) await once(child, 'exit')
  }
  for (let tries = 0; tries < 600; tries += 1) {
    const url = /Ready on (http:\S+)/u.exec(text)?.[1]
    if (url !== undefined) return { url: url.replace('localhost', '127.0.0.1'), end }
    if (child.exitCode !== null) break
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  await end()
  throw new Error(`wrangler does not serve: ${text}`)
}
