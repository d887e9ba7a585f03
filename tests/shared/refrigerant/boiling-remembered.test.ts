import { describe, expect, it } from 'vitest'
import estimated from '../../../data/mixing/estimated.json' with { type: 'json' }
import { refrigerant, saturationTemperature } from '../../../shared/refrigerant/index.ts'
import { REMEMBERED_BOILING_POINTS } from '../../support/remembered-boiling-points.ts'

const ATMOSPHERE = 101_325
const rows = REMEMBERED_BOILING_POINTS.filter(([id]) => id !== 'R-413A')

/** K; the second for blends that hold a pair whose mixing parameters are estimated. */
const NEAR = 1.3
const NEAR_ESTIMATED = 2.3

const pairs = new Set(estimated.pairs.map((p) => [...p.components].sort().join()))

describe('normal boiling points, against remembered figures', () => {
  it.each(rows)('%s boils from about %d to %d °C, as remembered', (id, bubble, dew) => {
    const r = refrigerant(id)
    const names = r.info.composition.map((c) => c.substance)
    const isEstimated = names.some((a, i) =>
      names.slice(i + 1).some((b) => pairs.has([a, b].sort().join())),
    )
    const near = isEstimated ? NEAR_ESTIMATED : NEAR
    const found = (line: 'bubble' | 'dew') => saturationTemperature(r, ATMOSPHERE, line) - 273.15
    expect(Math.abs(found('bubble') - bubble)).toBeLessThan(near)
    expect(Math.abs(found('dew') - dew)).toBeLessThan(near)
  })
})
