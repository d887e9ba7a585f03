import { describe, expect, it } from 'vitest'
import { newNotes } from '../../../shared/notes.ts'
import { mass, parseQuantity } from '../../../shared/quantity/index.ts'
import { charging } from '../../../shared/service/charging.ts'
import { shopScale } from '../../../shared/service/shop-scale.ts'

describe('a scale of which nothing is said', () => {
  it('is off by 15 g, as one published machine allows, and says so in the units of the job', () => {
    const told = (like: Parameters<typeof shopScale>[0]) => {
      const notes = newNotes()
      expect(shopScale(like, notes)).toBeCloseTo(0.015, 9)
      expect(notes.sources.map(({ id }) => id)).toEqual(['shop-scale'])
      return notes.assumptions.map(({ short }) => short)
    }
    expect(told(undefined)).toEqual(['scale ±15 g'])
    expect(told(mass(2))).toEqual(['scale ±15 g'])
    expect(told(parseQuantity('3 lb 8 oz', ['mass']))).toEqual(['scale ±0.53 oz'])
    // A ± of the charge is not one of the scale.
    expect(told(parseQuantity('1500 ±40 g', ['mass']))).toEqual(['scale ±15 g'])
  })

  it('cannot hold a tolerance below √2 · 15 g, the difference of two of its readings', () => {
    const verdict = (chargeTolerance: string) =>
      charging.run({
        refrigerant: 'R-134a',
        labelCharge: '1500 g',
        scaleStart: '10 kg',
        chargeTolerance,
      }).result.scale?.verdict
    expect(verdict('21 g')).toBe('too-coarse')
    expect(verdict('21.5 g')).toBe('fine-enough')
  })
})
