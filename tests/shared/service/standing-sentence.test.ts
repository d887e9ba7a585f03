import { describe, expect, it } from 'vitest'
import { pressureDifference } from '../../../shared/quantity/index.ts'
import { isCoarse, sentence } from '../../../shared/service/leak-test/standing-sentence.ts'

const PSI = 6894.757
const MICRON = 0.133_322_4
const INHG = 3386.389

/** Change, what temperature explains, the rest, and its ±, all in one unit. */
const said = (
  kind: 'pressure' | 'vacuum',
  verdict: Parameters<typeof sentence>[1],
  pascal: number,
  [change, explained, rest, band]: readonly [number, number, number, number],
) =>
  sentence(
    kind,
    verdict,
    pressureDifference(change * pascal),
    pressureDifference(explained * pascal),
    pressureDifference(rest * pascal, band * pascal),
  )

describe('what a standing test is said to show', () => {
  it.each([
    [
      'no-leak-shown',
      [-3, -3.1, 0.1, 0.9],
      'Fell 3 psi; 3.1 ±0.9 psi explained by cooling: no leak shown.',
    ],
    [
      'no-leak-shown',
      [0, 0, 0, 0.9],
      'Did not change; no change expected, ±0.9 psi: no leak shown.',
    ],
    [
      'no-leak-shown',
      [2, 2.2, -0.2, 0.9],
      'Rose 2 psi; 2.2 ±0.9 psi of rise by warming expected: no leak shown.',
    ],
    [
      'leak',
      [-10, -3, -7, 0.9],
      'Fell 10 psi; 3 ±0.9 psi explained by cooling; 7 ±0.9 psi is not: it leaks.',
    ],
    [
      'leak',
      [-1, 3, -4, 0.9],
      'Fell 1 psi; 3 ±0.9 psi of rise by warming expected; 4 ±0.9 psi is not: it leaks.',
    ],
    [
      'no-valid-test',
      [5, -3, 8, 0.9],
      'Rose 5 psi; 3 ±0.9 psi of fall by cooling expected; 8 ±0.9 psi too high: the readings do not fit together.',
    ],
  ] as const)('of pressure, %s %j', (verdict, parts, words) => {
    expect(said('pressure', verdict, PSI, parts)).toBe(words)
  })

  it.each([
    [
      'rises',
      MICRON,
      [600, 0, 600, 100],
      'Rose 600 micron; no change expected, ±100 micron: it rises, by air or by water. Two readings cannot tell which; a series can.',
    ],
    [
      'no-valid-test',
      MICRON,
      [-600, 0, -600, 100],
      'Fell 600 micron; no change expected, ±100 micron; 600 ±100 micron too deep: the pump still pulled, or it cooled.',
    ],
    [
      'rises',
      INHG,
      [2, 0, 2, 0.5],
      'Rose 2 inHg; no change expected, ±0.5 inHg: it rises, by air or by water. Two readings cannot tell which; a series can.',
    ],
  ] as const)('of a vacuum, %s', (verdict, pascal, parts, words) => {
    expect(said('vacuum', verdict, pascal, parts)).toBe(words)
  })
})

describe('a vacuum is told in inches of mercury', () => {
  it.each([
    [1000, undefined, false],
    [1000.5, undefined, true],
    [-1000.5, undefined, true],
    [10, 1000.5, true],
    [10, 999, false],
    [0, undefined, false],
  ])('a change of %d Pa within %s: %s', (change, band, coarse) => {
    expect(isCoarse(change, band)).toBe(coarse)
  })
})
