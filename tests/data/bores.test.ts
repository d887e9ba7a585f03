import { describe, expect, it } from 'vitest'
import bores from '../../data/service/bores.json' with { type: 'json' }
import checks from '../../data/service/charge.json' with { type: 'json' }

/** '1-3/8' as 1.375. */
const inches = (size: string) => {
  const [, whole = '0', over = '0', under = '1'] = /^(?:(\d+)-)?(\d+)\/(\d+)$/u.exec(size) ?? []
  return Number(whole) + Number(over) / Number(under)
}

describe('the tables of bores and line charges', () => {
  it('name a source for every row', () => {
    for (const row of bores.rows) expect(Object.keys(bores.sources)).toContain(row.source)
    for (const row of [...checks.liquidLine, checks.chargeTolerance]) {
      expect(Object.keys(checks.sources)).toContain(row.source)
    }
  })

  it('have bores that grow with the size, and walls of at least 0.03 in', () => {
    for (const kind of ['hose', 'tube']) {
      const rows = bores.rows.filter((row) => row.kind === kind && row.temper !== 'drawn')
      expect(rows.length).toBeGreaterThanOrEqual(4)
      for (const [index, row] of rows.entries()) {
        expect(row.boreIn).toBeGreaterThan(rows[index - 1]?.boreIn ?? 0)
      }
    }
    for (const { kind, size, boreIn } of bores.rows) {
      if (kind === 'tube') expect(inches(size) - boreIn).toBeGreaterThanOrEqual(0.059)
    }
  })
})
