import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { budget, compareWithBand, fromLimits, propagate } from '../../../shared/quantity/index.ts'

const finite = fc.double({ min: -1e3, max: 1e3, noNaN: true })
const width = fc.double({ min: 0, max: 10, noNaN: true })

describe('propagation of uncertainty', () => {
  it('of a sum is in quadrature, whatever the signs', () => {
    fc.assert(
      fc.property(finite, finite, width, width, (a, b, ua, ub) => {
        const sum = propagate(
          [
            { si: a, plusMinus: ua },
            { si: b, plusMinus: ub },
          ],
          (x, y) => (x ?? 0) - (y ?? 0),
        )
        expect(sum.si).toBe(a - b)
        expect(sum.plusMinus).toBeCloseTo(Math.hypot(ua, ub), 9)
      }),
    )
  })

  it('of a product follows the relative widths (GUM 5.1.6)', () => {
    const { si, plusMinus } = propagate(
      [
        { si: 200, plusMinus: 2 },
        { si: 50, plusMinus: 1 },
      ],
      (x = 0, y = 0) => x * y,
    )
    expect((plusMinus ?? 0) / si).toBeCloseTo(Math.hypot(0.01, 0.02), 9)
  })

  it('is none where no input carries one, and nothing where all carry zero', () => {
    expect(propagate([{ si: 1 }, { si: 2 }], (x = 0, y = 0) => x + y).plusMinus).toBeUndefined()
    expect(propagate([{ si: 1, plusMinus: 0 }], (x = 0) => x).plusMinus).toBe(0)
  })

  it('takes the other side where one is refused, and refuses where both are', () => {
    const inside = (x = 0) => {
      if (x > 10 || x < 0) throw new CalcError('out-of-range', 'outside')
      return 2 * x
    }
    expect(propagate([{ si: 9.5, plusMinus: 1 }], inside).plusMinus).toBe(2)
    expect(() => propagate([{ si: 5, plusMinus: 20 }], inside)).toThrow(/above and below/)
  })

  it('does not swallow a fault that is no refusal', () => {
    const faulty = (x = 0) => {
      if (x > 1) throw new TypeError('a bug')
      return x
    }
    expect(() => propagate([{ si: 1, plusMinus: 1 }], faulty)).toThrow(TypeError)
  })

  it('of any number of inputs moves each by its own, the others left as they are', () => {
    const input = fc.record({ slope: finite, si: finite, plusMinus: width })
    fc.assert(
      fc.property(fc.array(input, { minLength: 1, maxLength: 9 }), (inputs) => {
        // Each input has a slope of its own and is bound to its place: a sum of squares would hide a mix-up.
        const f = (...values: number[]) =>
          values.reduce((sum, value, index) => sum + (inputs[index]?.slope ?? 0) * value, 0)
        const named = inputs.map((entry, index) => ({ ...entry, name: `${index}` }))
        const spans = inputs.map(({ slope, plusMinus }) => Math.abs(slope * plusMinus))
        const together = Math.hypot(...spans)
        const si = inputs.reduce((sum, entry) => sum + entry.slope * entry.si, 0)
        const found = budget(named, f)
        for (const { si: value, plusMinus } of [propagate(inputs, f), found]) {
          expect(value).toBeCloseTo(si, 6)
          expect(plusMinus).toBeCloseTo(together, 6)
        }
        for (const { name, plusMinus } of found.parts) {
          expect(plusMinus).toBeCloseTo(spans[Number(name)] ?? Number.NaN, 6)
        }
        expect(found.parts).toHaveLength(inputs.length)
      }),
    )
  })

  it('of limits is the rectangle of GUM 4.3.7 at coverage factor 2', () => {
    expect(fromLimits(3)).toBeCloseTo(2 * (3 / Math.sqrt(3)), 12)
    expect(fromLimits(-3)).toBe(fromLimits(3))
  })
})

describe('a figure against a band', () => {
  it.each([
    [2, 0, 'below'],
    [4, 0, 'inside'],
    [6, 0, 'inside'],
    [8, 0, 'inside'],
    [9, 0, 'above'],
    [5, 0.9, 'inside'],
    [5, 1.1, 'cannot-tell'],
    [3, 0.9, 'below'],
    [3, 1.1, 'cannot-tell'],
    [9, 1.1, 'cannot-tell'],
    [6, 9, 'cannot-tell'],
  ] as const)('%d ±%d against 4 to 8 is %s', (si, plusMinus, verdict) => {
    expect(compareWithBand({ si, plusMinus }, 4, 8)).toBe(verdict)
  })

  it('never turns over when the uncertainty grows: a verdict can only be lost', () => {
    fc.assert(
      fc.property(finite, width, width, (si, narrow, more) => {
        const sure = compareWithBand({ si, plusMinus: narrow + more }, -5, 5)
        if (sure !== 'cannot-tell') {
          expect(compareWithBand({ si, plusMinus: narrow }, -5, 5)).toBe(sure)
        }
      }),
    )
  })
})
