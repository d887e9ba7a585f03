import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { describe, expect, it } from 'vitest'

/** Bytes, gzipped: the whole service, all refrigerants, rules, pictures and diagnosis with it, stays small on the edge. */
const BUDGET = 445_000

describe('the bundle for the edge', () => {
  it('fits its budget', { timeout: 30_000 }, async () => {
    const { outputFiles, metafile } = await build({
      entryPoints: ['worker/index.ts'],
      absWorkingDir: new URL('..', import.meta.url).pathname,
      bundle: true,
      minify: true,
      format: 'esm',
      conditions: ['workerd', 'worker', 'browser'],
      metafile: true,
      write: false,
      outdir: 'dist/worker',
    })
    const bytes = outputFiles.reduce((sum, file) => sum + gzipSync(file.contents).length, 0)
    expect(bytes).toBeGreaterThan(100_000)
    expect(bytes).toBeLessThan(BUDGET)
    const inputs = Object.keys(metafile.inputs)
    // Node's own parts stay out, and what the fits were measured by.
    expect(inputs.filter((name) => name.startsWith('node:'))).toEqual([])
    expect(inputs).not.toContain('data/saturation-fits.json')
  })
})
