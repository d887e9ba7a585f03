import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  atWorst,
  combine,
  difference,
  exactly,
  highest,
  lowest,
  product,
  settle,
  tied,
  times,
  total,
} from '../../../shared/quantity/index.ts'

const reading = (si: number, plusMinus?: number) => ({ si, plusMinus })

describe('a figure tied to what it rests on', () => {
  it('moves with one reading wherever that stands, and adds others in quadrature', () => {
    const shared = reading(10, 3)
    const twice = total([tied(shared, 'one'), tied(shared, 'one')])
    expect(settle(twice)).toMatchObject({ si: 20, plusMinus: 6 })
    const two = total([tied(reading(10, 3), 'one'), tied(reading(10, 4), 'other')])
    expect(settle(two).plusMinus).toBeCloseTo(5, 12)
    expect(settle(difference(tied(shared, 'one'), tied(shared, 'one'))).plusMinus).toBe(0)
  })

  it('names its ingredients, the largest first', () => {
    const area = product(tied(reading(2, 0.1), 'width'), tied(reading(5, 0.1), 'length'))
    const { parts } = settle(area)
    expect(parts.map(({ name }) => name)).toEqual(['width', 'length'])
    expect(parts[0]?.plusMinus).toBeCloseTo(0.5, 12)
    expect(parts[1]?.plusMinus).toBeCloseTo(0.2, 12)
  })

  it('has no ± where nothing brings one', () => {
    expect(settle(times(3, exactly(2)))).toEqual({ si: 6, plusMinus: undefined, parts: [] })
    expect(settle(tied(reading(4), 'bare')).plusMinus).toBeUndefined()
  })

  it('is bounded by every ± at its worse end at once', () => {
    const both = total([tied(reading(10, 3), 'one'), tied(reading(10, 4), 'other')])
    expect(atWorst(settle(both))).toBe(27)
    expect(highest(settle(both))).toBeCloseTo(25, 12)
    expect(lowest(settle(both))).toBeCloseTo(15, 12)
    expect([lowest({ si: 5 }), highest({ si: 5 })]).toEqual([5, 5])
  })

  it('refuses what is larger than any number', () => {
    const huge = tied(reading(1e200, 1e199), 'huge')
    expect(() => settle(product(huge, tied(reading(1e200, 1), 'other')))).toThrow(/any number/u)
  })

  it('evaluates only what a moved reading touches', () => {
    let calls = 0
    const counted = (si: number) =>
      combine([tied(reading(si, 1), 'part')], (value = 0) => {
        calls += 1
        return value
      })
    const sum = total(Array.from({ length: 20 }, (_, index) => counted(index)))
    calls = 0
    settle(sum)
    // Each of twenty is moved up and down; the other nineteen stay as they are.
    expect(calls).toBe(40)
  })
})

describe('laws', () => {
  const part = fc.record({
    si: fc.double({ min: -100, max: 100, noNaN: true }),
    plusMinus: fc.double({ min: 0, max: 10, noNaN: true }),
  })

  it('the order of a sum changes nothing, and its ± is never more than all of them', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 8 }), (parts) => {
        const sum = (list: typeof parts) => settle(total(list.map((entry) => tied(entry, 'part'))))
        const [one, other] = [sum(parts), sum([...parts].reverse())]
        expect(other.si).toBeCloseTo(one.si, 10)
        expect(other.plusMinus).toBeCloseTo(one.plusMinus ?? Number.NaN, 8)
        const all = parts.reduce((width, { plusMinus }) => width + plusMinus, 0)
        expect(one.plusMinus).toBeLessThanOrEqual(all + 1e-9)
      }),
    )
  })
})
