import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { builtEdge } from './generate/edge.ts'

/** Bytes, gzipped: the whole service, all refrigerants, rules, pictures and diagnosis with it, stays small on the edge. */
const BUDGET = 270_000

describe('the bundle for the edge', () => {
  it('fits its budget', { timeout: 30_000 }, async () => {
    const { program, metafile } = await builtEdge()
    const bytes = gzipSync(program).length
    expect(bytes).toBeGreaterThan(100_000)
    expect(bytes).toBeLessThan(BUDGET)
    const inputs = Object.keys(metafile.inputs)
    // Node's own parts stay out, and what the fits were measured by.
    expect(inputs.filter((name) => name.startsWith('node:'))).toEqual([])
    expect(inputs).not.toContain('data/saturation-fits.json')
  })
})
