import { describe, expect, it } from 'vitest'
import { SEA_LEVEL_PA, standardAtmosphere } from '../../shared/quantity/index.ts'

const FOOT = 0.3048
const IN_HG = 3_386.388_640_341

describe('standard atmosphere', () => {
  // Vehicle makers print for vacuum gauges: 1 inHg less per 1000 ft (Ford Topaz 1994, Cadillac 1989,
  // Komatsu). A rule of thumb, which holds within a tenth of itself.
  it.each([1, 2, 3, 5, 7, 10])(
    'takes about the printed 1 inHg per 1000 ft off at %d 000 ft',
    (thousand) => {
      const less = (SEA_LEVEL_PA - standardAtmosphere(thousand * 1000 * FOOT)) / IN_HG
      expect(Math.abs(less - thousand)).toBeLessThan(0.1 * thousand)
    },
  )
})
