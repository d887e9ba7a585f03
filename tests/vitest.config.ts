import { cloudflareTest } from '@cloudflare/vitest-plugin'
import { defineConfig } from 'vitest/config'

const root = new URL('..', import.meta.url).pathname

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          root,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/worker/**', 'tests/mutants/fixture/**'],
          setupFiles: ['tests/support/chance.ts'],
          testTimeout: 30_000,
        },
      },
      {
        plugins: [
          cloudflareTest({
            main: `${root}worker/index.ts`,
            wrangler: { configPath: `${root}worker/wrangler.jsonc` },
          }),
        ],
        test: {
          name: 'worker',
          root,
          include: ['tests/worker/**/*.test.ts'],
          setupFiles: ['tests/support/chance.ts'],
          testTimeout: 30_000,
        },
      },
    ],
  },
})
