import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  budget,
  compareWithBand,
  propagate,
  settling,
  surelyAbove,
  surelyBelow,
  widthAround,
  widthOf,
} from '../../../shared/quantity/index.ts'

const width = fc.double({ min: 0, max: 10, noNaN: true })
const figure = fc.double({ min: -100, max: 100, noNaN: true })

describe('a budget', () => {
  it('adds however many there are in quadrature, and leaves none out', () => {
    for (let count = 1; count <= 12; count += 1) {
      const sizes = Array.from({ length: count }, (_, i) => 1 + ((i * 5) % 7))
      const found = budget(
        sizes.map((plusMinus, i) => ({ name: `${i}`, si: 0, plusMinus })),
        (...values) => values.reduce((sum: number, value) => sum + (value ?? 0), 0),
      )
      expect(found.plusMinus).toBeCloseTo(Math.hypot(...sizes), 9)
      expect(found.parts.map(({ plusMinus }) => plusMinus)).toEqual(sizes.toSorted((a, b) => b - a))
    }
  })

  it('is as wide where nobody asks for the shares', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(figure, fc.option(width)), { maxLength: 6 }), (given) => {
        const ingredients = given.map(([si, plusMinus], at) => ({
          name: `${at}`,
          si,
          ...(plusMinus === null ? {} : { plusMinus }),
        }))
        const product = (values: readonly number[]) => values.reduce((all, value) => all * value, 1)
        const { si, plusMinus } = budget(ingredients, (...values) => product(values))
        const alone = widthAround(ingredients, si, (moved, value) =>
          product(ingredients.map((each, at) => (at === moved ? value : each.si))),
        )
        expect(alone).toBe(plusMinus)
      }),
    )
  })

  it('names what each ingredient brings, the largest first', () => {
    const found = budget(
      [
        { name: 'gauge', si: 10, plusMinus: 1 },
        { name: 'exact', si: 5 },
        { name: 'barometer', si: 100, plusMinus: 3 },
        { name: 'probe', si: 2, plusMinus: 0 },
      ],
      (a = 0, b = 0, c = 0, d = 0) => 2 * a + b - c + d,
    )
    expect(found.si).toBe(-73)
    expect(found.parts).toEqual([
      { name: 'barometer', plusMinus: 3 },
      { name: 'gauge', plusMinus: 2 },
      { name: 'probe', plusMinus: 0 },
    ])
    expect(found.plusMinus).toBeCloseTo(Math.sqrt(13), 12)
  })

  it('has no ± where nothing carries one', () => {
    const found = budget([{ name: 'exact', si: 5 }], (a = 0) => a)
    expect(found).toEqual({ si: 5, plusMinus: undefined, parts: [] })
  })

  it('has the ± that propagation gives, of any figures and any slopes', () => {
    fc.assert(
      fc.property(figure, figure, width, width, figure, (a, b, ua, ub, slope) => {
        const f = (x = 0, y = 0) => slope * x - y * y
        const inputs = [
          { name: 'a', si: a, plusMinus: ua },
          { name: 'b', si: b, plusMinus: ub },
        ]
        const { si, plusMinus, parts } = budget(inputs, f)
        const plain = propagate(inputs, f)
        expect(si).toBe(plain.si)
        expect(plusMinus).toBeCloseTo(plain.plusMinus ?? Number.NaN, 9)
        expect(parts.map((part) => part.plusMinus)).toEqual(
          parts.map((part) => part.plusMinus).toSorted((x, y) => y - x),
        )
        for (const part of parts) expect(part.plusMinus).toBeGreaterThanOrEqual(0)
        // Half the span that each makes alone: of −y² it is 2·|b|·ub.
        const alone = parts.find(({ name }) => name === 'b')?.plusMinus
        expect(alone).toBeCloseTo(Math.abs(2 * b * ub), 6)
      }),
    )
  })

  it('takes the side that can be computed, at either edge', () => {
    const edge = (low: number, high: number) => (x: number | undefined) => {
      if (x === undefined || x < low || x > high) throw new CalcError('out-of-range', 'outside')
      return 10 * x
    }
    const one = [{ name: 'x', si: 5, plusMinus: 2 }]
    expect(budget(one, edge(0, 6)).plusMinus).toBe(20)
    expect(budget(one, edge(4, 10)).plusMinus).toBe(20)
    expect(() => budget(one, edge(4.5, 5.5))).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    )
  })
})

describe('what is sure', () => {
  it('lies clear of the limit with its whole interval', () => {
    expect(surelyBelow({ si: 3, plusMinus: 0.9 }, 4)).toBe(true)
    expect(surelyBelow({ si: 3, plusMinus: 1 }, 4)).toBe(false)
    expect(surelyBelow({ si: 3 }, 4)).toBe(true)
    expect(surelyAbove({ si: 5, plusMinus: 0.9 }, 4)).toBe(true)
    expect(surelyAbove({ si: 5, plusMinus: 1 }, 4)).toBe(false)
    expect(surelyAbove({ si: 4 }, 4)).toBe(false)
    expect(widthOf({ si: 4 })).toBe(0)
    expect(widthOf({ si: 4, plusMinus: 2 })).toBe(2)
  })

  it('counts the edges of a band as inside it', () => {
    expect(compareWithBand({ si: 5, plusMinus: 1 }, 4, 6)).toBe('inside')
    expect(compareWithBand({ si: 4 }, 4, 6)).toBe('inside')
    expect(compareWithBand({ si: 6 }, 4, 6)).toBe('inside')
    expect(compareWithBand({ si: 3, plusMinus: 1 }, 4, 6)).toBe('cannot-tell')
    expect(compareWithBand({ si: 7, plusMinus: 1 }, 4, 6)).toBe('cannot-tell')
  })
})

describe('what would settle a verdict', () => {
  const parts = [
    { name: 'gauge', plusMinus: 5 },
    { name: 'barometer', plusMinus: 3 },
    { name: 'probe', plusMinus: 4 },
  ]

  it('is the largest part, made as good as the margin leaves room for', () => {
    const found = settling(parts, 13)
    expect(found?.largest).toEqual({ name: 'gauge', plusMinus: 5 })
    expect(found?.othersPlusMinus).toBe(5)
    // √(13² − 5²) = 12
    expect(found?.timesAsGood).toBeCloseTo(5 / 12, 12)
  })

  it('is not one part alone where the others reach over the limit', () => {
    expect(settling(parts, 5)?.timesAsGood).toBeUndefined()
    expect(settling(parts, 4)?.timesAsGood).toBeUndefined()
    expect(settling(parts, 5.1)?.timesAsGood).toBeCloseTo(5 / Math.sqrt(5.1 ** 2 - 25), 9)
  })

  it('is nothing where nothing brings an uncertainty', () => {
    expect(settling([], 1)).toBeUndefined()
  })
})
