import { run } from '../../cli/program.ts'
import type { Streams } from '../../cli/streams.ts'

export interface Session {
  readonly status: number
  readonly out: string
  readonly err: string
}

interface Setting {
  readonly stdin?: string | readonly string[] | AsyncIterable<string>
  readonly files?: Readonly<Record<string, string>>
  readonly directories?: readonly string[]
  /** Whether the error stream is a terminal. */
  readonly watched?: boolean
  readonly width?: number
  readonly color?: boolean
  /** What the shop's settings hold, and what becomes of them. */
  readonly settings?: { text?: string }
  /** What is written to files, by their names. */
  readonly written?: Record<string, string>
  readonly ask?: Streams['ask']
}

/** Runs one command line against a pretended terminal. */
export async function session(argv: readonly string[], setting: Setting = {}): Promise<Session> {
  const out: string[] = []
  const err: string[] = []
  const { stdin = '', files = {}, directories = [], watched = false } = setting
  const { width = 80, color = false, settings = {}, written = {}, ask } = setting
  const streams: Streams = {
    out: (text) => {
      out.push(text)
      return undefined
    },
    err: (text) => void err.push(text),
    stdin: chunks(typeof stdin === 'string' ? [stdin] : stdin),
    readFile: async (path) => {
      if (directories.includes(path)) throw Object.assign(new Error('no'), { code: 'EISDIR' })
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
    async *openFile(path) {
      yield await this.readFile(path)
    },
    isThere: (path) => path in files || directories.includes(path),
    isWatched: watched,
    writeFile: async (path, text) => {
      written[path] = text
    },
    ask,
    width,
    color: { out: color, err: color },
  }
  const status = await run(argv, streams)
  return { status, out: out.join(''), err: err.join('') }
}

async function* chunks(texts: Iterable<string> | AsyncIterable<string>): AsyncIterable<string> {
  yield* texts
}
