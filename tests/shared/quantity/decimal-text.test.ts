import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalText } from '../../../shared/quantity/decimal-text.ts'

const figures = fc
  .tuple(fc.double({ min: -1e7, max: 1e7, noNaN: true }), fc.integer({ min: 0, max: 7 }))
  .map(([value, decimals]) => Number(value.toFixed(decimals)))

describe('the text of a number', () => {
  it('is that of String, for figures with few decimals and with many', () => {
    fc.assert(
      fc.property(fc.oneof(figures, fc.double()), (value) => {
        expect(decimalText(value)).toBe(String(value))
      }),
      { numRuns: 2_000 },
    )
  })

  it.each([0, -0, 0.1, 0.01, 0.001, 0.0001, 1.05, 1.005, -36.8, 999_999.999, 1e6, 1e21, 5e-7])(
    'is that of String for %d',
    (value) => expect(decimalText(value)).toBe(String(value)),
  )
})
