import { describe, expect, it } from 'vitest'
import { FEATURES } from '../../../shared/diagnosis/features.ts'
import { covarianceOf, type Spread, widened } from '../../../shared/diagnosis/spread.ts'

const n = FEATURES.length
const [A, B] = [FEATURES.indexOf('lowSidePa'), FEATURES.indexOf('ventK')]

/** Two readings that vary by 4 and 9, by 2 together; what moves all moves them by 3 and -5; 7 is the second's own. */
function spread(): Spread {
  const common = new Float64Array(n * n)
  common[A * n + A] = 4
  common[B * n + B] = 9
  common[A * n + B] = 2
  common[B * n + A] = 2
  const [along, own] = [new Float64Array(n), new Float64Array(n)]
  along[A] = 3
  along[B] = -5
  own[B] = 7
  return { common, along, own }
}

describe('a spread', () => {
  it('is what is common, what moves all readings at once, and what each has of its own', () => {
    const all = spread()
    expect(covarianceOf(all, A, A)).toBe(4 + 9)
    expect(covarianceOf(all, B, B)).toBe(9 + 25 + 7)
    expect(covarianceOf(all, A, B)).toBe(2 - 15)
    expect(covarianceOf(all, B, A)).toBe(2 - 15)
    expect(covarianceOf({ common: all.common }, B, B)).toBe(9)
  })

  it('widened stands further apart in all of it, by the square', () => {
    const wide = widened(spread(), 6)
    expect(covarianceOf(wide, B, B)).toBe(36 * 41)
    expect(covarianceOf(wide, A, B)).toBe(36 * -13)
  })
})
