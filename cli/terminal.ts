import { createReadStream, existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import envPaths from 'env-paths'
import { CalcError } from '../shared/errors.ts'
import { standardError, standardOutput } from './standard-streams.ts'
import type { Ask, SettingsFile, Streams } from './streams.ts'

const DEFAULT_WIDTH = 80
/** Lines longer than this are tiring to read, however wide the window. */
const WIDEST = 100
const NARROWEST = 40

interface Output {
  readonly isTTY?: boolean | undefined
  readonly columns?: number | undefined
}

type Environment = Readonly<Record<string, string | undefined>>

/** Colour on a terminal only; `NO_COLOR` (https://no-color.org) turns it off, `FORCE_COLOR` on. */
export function wantsColor(output: Output, environment: Environment): boolean {
  if (environment.NO_COLOR !== undefined && environment.NO_COLOR !== '') return false
  const forced = environment.FORCE_COLOR
  if (forced !== undefined && forced !== '') return forced !== '0' && forced !== 'false'
  return output.isTTY === true && environment.TERM !== 'dumb'
}

/** Columns to wrap to: the terminal's, or `COLUMNS`, within what reads well. */
export function widthOf(output: Output, environment: Environment): number {
  const asked = output.columns ?? Number.parseInt(environment.COLUMNS ?? '', 10)
  const columns = Number.isInteger(asked) && asked > 0 ? asked : DEFAULT_WIDTH
  return Math.min(Math.max(columns, NARROWEST), WIDEST)
}

/** The streams of the running process. */
export function terminal(process: NodeJS.Process): Streams {
  const error = standardError(process)
  const output = standardOutput(process, error)
  return {
    out: output.write,
    err: (text) => void error.write(text),
    // Opened only by a command that reads.
    get stdin() {
      const { stdin } = process
      if (stdin.isTTY) error.write('Reading what is typed; Ctrl-D on a new line ends it.\n')
      return stdin
    },
    readFile: async (path) => (await import('node:fs/promises')).readFile(path, 'utf8'),
    settings: settingsFile(process.env),
    writeFile,
    get ask() {
      return output.isTTY && process.stdin.isTTY === true ? PROMPTS : undefined
    },
    openFile: (path) => createReadStream(path),
    isThere: existsSync,
    get isWatched() {
      return error.isTTY
    },
    width: widthOf(output, process.env),
    color: {
      out: wantsColor(output, process.env),
      get err() {
        return wantsColor(error, process.env)
      },
    },
  }
}

/**
 * `settings.json` in the user's configuration folder; CHARGEWRIGHT_CONFIG names another folder.
 */
function settingsFile(environment: Environment): SettingsFile {
  const folder = environment.CHARGEWRIGHT_CONFIG ?? envPaths('chargewright', { suffix: '' }).config
  const path = join(folder, 'settings.json')
  return {
    path,
    async read() {
      // At once: what reads without waiting for it takes longer to load than the file to read.
      try {
        return readFileSync(path, 'utf8')
      } catch (error) {
        if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined
        throw error
      }
    },
    async write(text) {
      const { mkdir } = await import('node:fs/promises')
      await mkdir(folder, { recursive: true })
      await writeFile(path, text)
    },
  }
}

async function writeFile(path: string, text: string): Promise<void> {
  const { default: writeFileAtomic } = await import('write-file-atomic')
  await writeFileAtomic(path, text)
}

/** Ctrl-C at a question is a wish and no fault. @throws {CalcError} `refused` */
export async function untilBrokenOff<T>(question: () => Promise<T>): Promise<T> {
  try {
    return await question()
  } catch (error) {
    if (!(error instanceof Error && error.name === 'ExitPromptError')) throw error
    throw new CalcError('refused', 'Broken off: nothing is written.')
  }
}

const PROMPTS: Ask = {
  async text(message, check) {
    const { input } = await import('@inquirer/prompts')
    return untilBrokenOff(() => input({ message, validate: check }))
  },
  async choose(message, choices) {
    const { select } = await import('@inquirer/prompts')
    return untilBrokenOff(() => select({ message, choices: [...choices] }))
  },
}
