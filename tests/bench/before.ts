import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { showTold } from '../../shared/answer/told.ts'
import type { Computation } from '../../shared/operation.ts'
import { operation } from '../../shared/operations.ts'
import { showAll } from '../../shared/quantity/index.ts'
import { median } from './median.ts'

/** The core before answers were told, and before every reading had a ± of its own. */
const COMMIT = 'a197c30'
const ROUNDS = 18
/** The system counts processor time in steps of a few ms. */
const CALLS = 1_000
const BOTH = { units: 'both', precise: false } as const

/** What is timed of an operation, then and now. */
interface Core {
  readonly example: Readonly<Record<string, unknown>>
  run(input: unknown): unknown
  parse(input: unknown): never
  compute(own: never): Pick<Computation<unknown>, 'result' | 'steps' | 'told'>
}

/** Median processor times, µs. */
interface Comparison {
  readonly what: string
  readonly whole: { readonly before: number; readonly now: number }
  /** How many times as long the answer is. */
  readonly length: number
  /** Input read, computed, result and steps shown, for exact readings, of which there is no ± to find. */
  readonly same: { readonly before: number; readonly now: number }
  /** The answer in words, which there was none of. */
  readonly toldNow: number
}

/** The operations that a bench sees most, beside what they took at {@link COMMIT}. */
export async function beforeBench(): Promise<readonly Comparison[]> {
  const folder = mkdtempSync(join(tmpdir(), 'chargewright-before-'))
  try {
    checkOut(folder)
    const at = (path: string) => import(pathToFileURL(join(folder, path)).href)
    const then = (await at('shared/operations.ts')) as { operation(name: string): Core }
    const { showAll: showThen } = (await at('shared/quantity/index.ts')) as {
      showAll: typeof showAll
    }
    return ['saturation', 'readings'].map((what) =>
      compare(what, then.operation(what), operation(what) as unknown as Core, showThen),
    )
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** @throws {Error} where this clone has not got the commit. */
function checkOut(folder: string): void {
  const archive = join(folder, 'core.tar')
  const parts = ['shared', 'data', 'package.json']
  try {
    execFileSync('git', ['archive', '--output', archive, COMMIT, ...parts], { stdio: 'ignore' })
  } catch {
    throw new Error(`the commit ${COMMIT} is not in this clone (git fetch --unshallow)`)
  }
  execFileSync('tar', ['-xf', archive, '-C', folder])
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'))
}

function compare(what: string, then: Core, now: Core, showThen: typeof showAll): Comparison {
  const same = (core: Core, show: typeof showAll) => {
    const exact = exactly(core.example)
    return () => {
      const { result, steps } = core.compute(core.parse(exact))
      return show({ result, steps }, BOTH)
    }
  }
  const { told } = now.compute(now.parse(now.example))
  if (!told) throw new Error(`${what} tells nothing`)
  const length = (core: Core) => JSON.stringify(core.run(core.example)).length
  const [wholeThen = 0, wholeNow = 0, sameThen = 0, sameNow = 0, toldNow = 0] = interleaved([
    () => then.run(then.example),
    () => now.run(now.example),
    same(then, showThen),
    same(now, showAll),
    () => showTold(told, { ...BOTH }),
  ])
  return {
    what,
    whole: { before: wholeThen, now: wholeNow },
    length: length(now) / length(then),
    same: { before: sameThen, now: sameNow },
    toldNow,
  }
}

/** Every reading as exact, under an exact barometer. */
function exactly(example: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const { altitude: _, ...readings } = example
  const exact = Object.entries(readings).map(([name, value]) => [
    name,
    String(value).replace(/^([\d.]+)(?: ±[\d.]+)? (\D+)$/u, '$1 ±0 $2'),
  ])
  return { ...Object.fromEntries(exact), barometer: '28 ±0 inHg' }
}

/** Median processor times of one call, µs, in rounds that take turns; the first third warms up. */
function interleaved(calls: readonly (() => unknown)[]): readonly number[] {
  const times = calls.map((): number[] => [])
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [index, call] of calls.entries()) {
      const start = process.threadCpuUsage()
      for (let count = 0; count < CALLS; count += 1) call()
      const { user, system } = process.threadCpuUsage(start)
      if (round >= ROUNDS / 3) times[index]?.push((user + system) / CALLS)
    }
  }
  return times.map(median)
}
