import { run } from '../../cli/program.ts'
import type { Streams } from '../../cli/streams.ts'

export interface Session {
  readonly status: number
  readonly out: string
  readonly err: string
}

interface Setting {
  readonly stdin?: string | readonly string[]
  readonly files?: Readonly<Record<string, string>>
  readonly width?: number
  readonly color?: boolean
  /** What the shop's settings hold, and what becomes of them. */
  readonly settings?: { text?: string }
}

/** Runs one command line against a pretended terminal. */
export async function session(argv: readonly string[], setting: Setting = {}): Promise<Session> {
  const out: string[] = []
  const err: string[] = []
  const { stdin = '', files = {}, width = 80, color = false, settings = {} } = setting
  const streams: Streams = {
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    stdin: chunks(typeof stdin === 'string' ? [stdin] : stdin),
    readFile: async (path) => {
      const text = files[path]
      if (text === undefined) throw Object.assign(new Error('not there'), { code: 'ENOENT' })
      return text
    },
    settings: {
      path: '/config/settings.json',
      read: async () => settings.text,
      write: async (text) => {
        settings.text = text
      },
    },
    width,
    color: { out: color, err: color },
  }
  const status = await run(argv, streams)
  return { status, out: out.join(''), err: err.join('') }
}

async function* chunks(texts: readonly string[]): AsyncIterable<string> {
  yield* texts
}
