import { runTests } from './run-tests.ts'
import type { Scratch } from './scratch.ts'
import type { Mutant, Verdict } from './types.ts'

/** What the tests say and cost before any fault is in. */
export interface Baseline {
  readonly seed: number
  readonly seconds: number
  /** Milliseconds of each test file that passes. */
  readonly took: ReadonlyMap<string, number>
  /** Test files that fail as the tree stands: they would kill every mutant, and are not asked. */
  readonly broken: readonly string[]
}

/** Runs all tests that will be asked, unspoilt. */
export async function baseline(
  scratch: Scratch,
  tests: readonly string[],
  seed: number,
): Promise<Baseline> {
  const run = await runTests(scratch.root, tests, { seed, limitSeconds: 1800, bail: false })
  if (run.took.size === 0 && tests.length > 0) {
    throw new Error(`The tests do not run before any fault is in: ${run.said}`)
  }
  return { seed, seconds: run.seconds, took: run.took, broken: run.broken }
}

/**
 * Whether a test is of the room itself: it stands in a folder of its name, or bears it. What holds
 * the project to a text or to the reference library is every room's own, and the tests of data are
 * those of the rooms of data and of what is made from it.
 */
export const isOwn = (test: string, room: string): boolean =>
  test.includes(`/${room.split('/').at(-1)}`) ||
  /^tests\/(?:published|reference)\//u.test(test) ||
  (/^(?:data\/|substance$|refrigerant$)/u.test(room) &&
    /^tests\/(?:data|shared\/refrigerant)\//u.test(test))

/** The room's own tests first, then the others; the quicker before the slower. */
function inOrder(
  tests: readonly string[],
  room: string,
  { took: known }: Baseline,
): readonly string[] {
  const own = (test: string) => (isOwn(test, room) ? 0 : 1)
  const took = (test: string) => known.get(test) ?? 0
  return [...tests].sort((a, b) => own(a) - own(b) || took(a) - took(b) || (a < b ? -1 : 1))
}

/** Puts one fault in and asks the tests that could see it. */
export async function judge(
  scratch: Scratch,
  mutant: Mutant,
  asked: readonly string[],
  before: Baseline,
): Promise<Verdict> {
  const sound = asked.filter((test) => !before.broken.includes(test))
  const tests = inOrder(sound, mutant.room, before)
  const looked = tests.length
  if (looked === 0) return { mutant, fate: 'survived', seconds: 0, looked }
  const usual = tests.reduce((sum, test) => sum + (before.took.get(test) ?? 0), 0) / 1000
  const limitSeconds = 30 + 4 * usual
  const options = { seed: before.seed, limitSeconds, bail: true }
  const run = await scratch.with(mutant, () => runTests(scratch.root, tests, options))
  const fate = run.ended === 'passed' ? 'survived' : run.ended === 'late' ? 'late' : 'killed'
  return { mutant, fate, seconds: run.seconds, looked, ...(run.failed && { by: run.failed }) }
}
