import type { Reach } from './graph.ts'
import { type Run, runTests } from './run-tests.ts'
import type { Scratch } from './scratch.ts'
import type { Mutant, Verdict } from './types.ts'

/** What the tests say and cost before any fault is in. */
export interface Baseline {
  readonly run: Run
  readonly seed: number
}

/** Runs all tests that will be asked, unspoilt: one that fails anyway would kill every mutant. */
export async function baseline(
  scratch: Scratch,
  tests: readonly string[],
  seed: number,
): Promise<Baseline> {
  const run = await runTests(scratch.root, tests, { seed, limitSeconds: 1800, bail: false })
  if (run.ended !== 'passed') {
    throw new Error(`The tests fail before any fault is in: ${run.failed ?? run.said}`)
  }
  return { run, seed }
}

/** The room's own tests first, then the others; the quicker before the slower. */
function inOrder(tests: readonly string[], room: string, { run }: Baseline): readonly string[] {
  const own = (test: string) => (test.includes(`/${room.split('/').at(-1)}`) ? 0 : 1)
  const took = (test: string) => run.took.get(test) ?? 0
  return [...tests].sort((a, b) => own(a) - own(b) || took(a) - took(b) || (a < b ? -1 : 1))
}

/** Puts one fault in and asks the tests that could see it. */
export async function judge(
  scratch: Scratch,
  mutant: Mutant,
  reach: Reach,
  before: Baseline,
): Promise<Verdict> {
  const tests = inOrder(reach(mutant.file), mutant.room, before)
  const looked = tests.length
  if (looked === 0) return { mutant, fate: 'survived', seconds: 0, looked }
  const usual = tests.reduce((sum, test) => sum + (before.run.took.get(test) ?? 0), 0) / 1000
  const limitSeconds = 30 + 4 * usual
  const options = { seed: before.seed, limitSeconds, bail: true }
  const run = await scratch.with(mutant, () => runTests(scratch.root, tests, options))
  const fate = run.ended === 'passed' ? 'survived' : run.ended === 'late' ? 'late' : 'killed'
  return { mutant, fate, seconds: run.seconds, looked, ...(run.failed && { by: run.failed }) }
}
