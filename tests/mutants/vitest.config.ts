import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** The tests to run, in their order: cheapest first, so that a fault is met soon. */
const tests: readonly string[] = JSON.parse(process.env.MUTANTS_TESTS ?? '[]')

class AsGiven extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) =>
      tests.findIndex((test) => moduleId.endsWith(`/${test}`))
    return Promise.resolve([...files].sort((a, b) => place(a) - place(b)))
  }
}

export default defineConfig({
  test: {
    include: [...tests],
    setupFiles: [new URL('setup.ts', import.meta.url).pathname],
    sequence: { sequencer: AsGiven },
    // One thread that keeps its modules: starting up is most of what a killed mutant costs.
    pool: 'threads',
    isolate: false,
    fileParallelism: false,
    fsModuleCache: true,
    testTimeout: 30_000,
  },
})
