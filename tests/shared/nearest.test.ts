import { describe, expect, it } from 'vitest'
import { nearestNames } from '../../shared/nearest.ts'
import { operation, operations } from '../../shared/operations.ts'
import { refusalOf } from '../support/refusal.ts'

describe('nearest names', () => {
  const names = ['saturation', 'table', 'readings', 'R-134a', 'R-1234yf']
  it.each([
    ['saturtion', 'saturation'],
    ['SATURATION', 'saturation'],
    ['tabel', 'table'],
    ['reading', 'readings'],
    ['r134', 'R-134a'],
    ['1234fy', 'R-1234yf'],
  ])('"%s" is nearest to %s', (typed, nearest) => {
    expect(nearestNames(typed, names)[0]).toBe(nearest)
  })

  it('offers nothing for what looks like none of them, however long', () => {
    expect(nearestNames('zzzzzzzzzzzzzzzz', names)).toEqual([])
    expect(nearestNames('x'.repeat(100_000), names)).toEqual([])
  })
})

describe('operation by name', () => {
  it('finds each by its own name', () => {
    for (const entry of operations) expect(operation(entry.name)).toBe(entry)
  })

  it('refuses an unknown one with the nearest', () => {
    expect(refusalOf(() => operation('saturtion'))).toMatchObject({
      code: 'unknown-name',
      hint: expect.stringMatching(/^Did you mean saturation\b/u),
    })
  })
})
