import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { warnedOf } from './generate/engines.ts'

describe('the lock file', () => {
  it('makes npm warn of no engine, whatever Node starts it (else: npm run engines)', () => {
    expect(warnedOf()).toEqual([])
    const asking = {
      packages: { x: { engines: { node: '>=22' } }, y: { engines: { node: '>=18' } } },
    }
    expect(warnedOf(asking)).toEqual(['x'])
  })

  it('pins the Node that runs every script, as the edge of what the packages ask for', () => {
    const { devDependencies } = JSON.parse(
      readFileSync(new URL('../package.json', import.meta.url), 'utf8'),
    ) as { devDependencies: Record<string, string> }
    expect(devDependencies.node).toMatch(/^24\./u)
  })
})
