import { spawn } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join, relative } from 'node:path'

const here = new URL('.', import.meta.url).pathname
const vitest = new URL('../../node_modules/vitest/vitest.mjs', import.meta.url).pathname

/** What one run of the tests said. */
export interface Run {
  readonly ended: 'passed' | 'failed' | 'late'
  readonly seconds: number
  /** Milliseconds that each test file took. */
  readonly took: ReadonlyMap<string, number>
  /** The first test that failed. */
  readonly failed?: string
  /** Every test file that failed. */
  readonly broken: readonly string[]
  /** What was printed, for when the run itself went wrong. */
  readonly said: string
}

interface Report {
  readonly testResults: readonly {
    readonly name: string
    readonly startTime: number
    readonly endTime: number
    readonly status: string
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[]
  }[]
}

function readReport(path: string): Report {
  try {
    return JSON.parse(readFileSync(path, 'utf8'))
  } catch {
    return { testResults: [] }
  }
}

/** A test that failed, else a file that could not even be read. */
function firstFailed(root: string, files: Report['testResults']): string | undefined {
  for (const { name, assertionResults } of files) {
    const test = assertionResults.find((entry) => entry.status === 'failed')
    if (test) return `${relative(root, name)}: ${test.fullName}`
  }
  const unread = files.find(({ status }) => status === 'failed')
  return unread && relative(root, unread.name)
}

/** Runs the tests in the order given, in one process, up to the first that fails. */
export async function runTests(
  root: string,
  tests: readonly string[],
  options: { readonly seed: number; readonly limitSeconds: number; readonly bail: boolean },
): Promise<Run> {
  const output = join(root, 'mutants-report.json')
  const inherited = Object.entries(process.env).filter(([name]) => !name.startsWith('VITEST'))
  const began = performance.now()
  const child = spawn(
    process.execPath,
    [
      vitest,
      'run',
      `--root=${root}`,
      `--config=${here}vitest.config.ts`,
      '--reporter=json',
      `--outputFile=${output}`,
      ...(options.bail ? ['--bail=1'] : []),
    ],
    {
      cwd: root,
      // A group of its own: a test that never comes back is ended with all that it started.
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: {
        ...Object.fromEntries(inherited),
        CI: 'true',
        CHARGEWRIGHT_NO_GOLDEN: '1',
        FUZZ_SEED: String(options.seed),
        MUTANTS_TESTS: JSON.stringify(tests),
      },
    },
  )
  const said: string[] = []
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk) => said.push(String(chunk)))
  }
  const end = () => {
    if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL')
  }
  let isLate = false
  const clock = setTimeout(() => {
    isLate = true
    end()
  }, options.limitSeconds * 1000)
  // Before the copy is removed, else it writes into it again.
  process.prependOnceListener('exit', end)
  const status = await new Promise<number | null>((done, failed) => {
    child.on('error', failed)
    child.on('close', done)
  })
  process.off('exit', end)
  clearTimeout(clock)
  const { testResults } = readReport(output)
  rmSync(output, { force: true })
  const failed = firstFailed(root, testResults)
  return {
    ended: isLate ? 'late' : status === 0 ? 'passed' : 'failed',
    seconds: (performance.now() - began) / 1000,
    took: new Map(
      testResults.map((file) => [relative(root, file.name), file.endTime - file.startTime]),
    ),
    ...(failed && { failed }),
    broken: testResults
      .filter(({ status }) => status === 'failed')
      .map(({ name }) => relative(root, name)),
    said: said.join(''),
  }
}
