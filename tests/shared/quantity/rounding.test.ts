import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalsFor, roundTo, roundUp, threeFigures } from '../../../shared/quantity/rounding.ts'

const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true })
const decimals = fc.integer({ min: 0, max: 6 })

describe('a figure rounded to decimals', () => {
  it('is what the language prints with as many', () => {
    const value = fc.double({ min: -1e12, max: 1e12, noNaN: true })
    fc.assert(
      fc.property(fc.oneof(value, size), decimals, (figure, places) => {
        expect(roundTo(figure, places)).toBe(Number(figure.toFixed(places)) || 0)
      }),
    )
  })

  it('is so between two others too, and never minus zero', () => {
    for (const [figure, places] of [
      [2.5, 0],
      [-2.5, 0],
      [1.005, 2],
      [1.015, 2],
      [8.345, 2],
      [-0.4, 0],
    ] as const) {
      expect(Object.is(roundTo(figure, places), Number(figure.toFixed(places)) || 0)).toBe(true)
    }
  })
})

describe('the decimals of an uncertainty', () => {
  it.each([
    [0.0123, 3],
    [0.0299, 3],
    [0.03, 2],
    [0.099, 2],
    [0.1, 2],
    [0.29, 2],
    [0.3, 1],
    [1.2, 1],
    [2.9, 1],
    [3, 0],
    [29, 0],
    [300, 0],
    // beyond the precision of any number
    [1e-20, 15],
  ])('of %d are %d: one digit, two when it begins with 1 or 2', (plusMinus, places) => {
    expect(decimalsFor(plusMinus, 7)).toBe(places)
  })

  it('of none are those that the kind has', () => {
    expect(decimalsFor(0, 7)).toBe(7)
  })

  it('never make it less than it is, by more than a twentieth of the last digit, nor nothing', () => {
    fc.assert(
      fc.property(size, decimals, (plusMinus, places) => {
        const step = 10 ** -places
        const rounded = roundUp(plusMinus, places)
        expect(rounded).toBeGreaterThanOrEqual(plusMinus - 0.0501 * step)
        expect(rounded).toBeGreaterThanOrEqual(step * (1 - 1e-12))
        expect(rounded).toBeLessThan(plusMinus + step * (1 + 1e-6))
        expect(roundUp(0, places)).toBe(0)
      }),
    )
  })
})

describe('three figures', () => {
  it.each([
    [123.4, 1, 0],
    [12.34, 1, 1],
    [1.234, 1, 2],
    [0.1234, 1, 3],
    [0.01234, 1, 4],
    // three more than usual at most
    [0.001234, 1, 4],
    [0.001234, 2, 5],
    [0, 2, 0],
  ])('of %d, usually with %d decimals, need %d', (figure, usual, places) => {
    expect(threeFigures(figure, usual)).toBe(places)
  })
})
