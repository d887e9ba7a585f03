import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decadeOf } from '../../../shared/quantity/decade.ts'

const byLogarithm = (size: number) => Math.floor(Math.log10(size))

describe('the power of ten of a size', () => {
  it('is the whole part of its logarithm', () => {
    fc.assert(
      fc.property(fc.double({ min: 5e-324, max: 1e300, noNaN: true }), (size) => {
        expect(decadeOf(size)).toBe(byLogarithm(size))
      }),
    )
    fc.assert(
      fc.property(fc.double({ min: 1e-7, max: 1e8, noNaN: true }), (size) => {
        expect(decadeOf(size)).toBe(byLogarithm(size))
      }),
    )
  })

  it('is the same beside each power of ten, on both sides', () => {
    for (let power = -9; power <= 9; power += 1) {
      const size = Number(`1e${power}`)
      for (const step of [0, 1, 2, 3, 8, 1e3, 1e6]) {
        for (const beside of [size * (1 + step * 2 ** -52), size * (1 - step * 2 ** -53)]) {
          expect(decadeOf(beside)).toBe(byLogarithm(beside))
        }
      }
    }
  })
})
