import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          root: new URL('..', import.meta.url).pathname,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/worker/**'],
          testTimeout: 30_000,
        },
      },
    ],
  },
})
