import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { solveLinear } from '../../../shared/substance/linear-solve.ts'

const entry = fc.double({ min: -10, max: 10, noNaN: true })

describe('solveLinear', () => {
  it('solves what a known answer was multiplied out from', () => {
    const size = fc.integer({ min: 1, max: 7 })
    const system = size.chain((n) =>
      fc.tuple(
        fc.array(entry, { minLength: n * n, maxLength: n * n }),
        fc.array(entry, { minLength: n, maxLength: n }),
      ),
    )
    fc.assert(
      fc.property(system, ([values, answer]) => {
        const n = answer.length
        // one heavy entry a row, off the diagonal: well conditioned, and rows must be swapped
        const matrix = Float64Array.from(values)
        for (let i = 0; i < n; i += 1) {
          const heavy = i * n + ((i + 1) % n)
          matrix[heavy] = (values[heavy] ?? 0) + 200
        }
        const right = Float64Array.from({ length: n }, (_, i) =>
          answer.reduce((sum, x, j) => sum + x * (matrix[i * n + j] ?? 0), 0),
        )
        solveLinear(matrix, right).forEach((x, i) => {
          expect(x).toBeCloseTo(answer[i] ?? Number.NaN, 9)
        })
      }),
    )
  })

  it('refuses a matrix without an answer, and one with NaN', () => {
    const singular = Float64Array.of(1, 2, 2, 4)
    expect(() => solveLinear(singular, Float64Array.of(1, 1))).toThrow(CalcError)
    const broken = Float64Array.of(Number.NaN, 1, 1, Number.NaN)
    expect(() => solveLinear(broken, Float64Array.of(1, 1))).toThrow(CalcError)
  })
})
