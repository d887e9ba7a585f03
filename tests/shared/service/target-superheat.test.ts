import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { quantity } from '../../../shared/quantity/index.ts'
import { targetSuperheat } from '../../../shared/service/readings/target-superheat.ts'
import { refusalOf } from '../../support/refusal.ts'

const kelvin = (fahrenheit: number) => quantity('temperature', fahrenheit, '°F').si
const targetF = (outdoorF: number, wetBulbF: number) =>
  quantity(
    'temperatureDifference',
    targetSuperheat(kelvin(outdoorF), kelvin(wetBulbF)).targetK,
    'K',
  ).to('°F')
const refusal = (outdoorF: number, wetBulbF: number) => refusalOf(() => targetF(outdoorF, wetBulbF))

describe('target superheat between the printed cells', () => {
  it('lies between its neighbours where all of them exist', () => {
    // Mean of the four cells 14, 17, 12, 15 and of two cells 18, 21 of one row.
    expect(targetF(57.5, 55)).toBeCloseTo((14 + 17 + 12 + 15) / 4, 9)
    expect(targetF(75, 65)).toBeCloseTo((18 + 21) / 2, 9)
    expect(targetF(67.5, 62)).toBeCloseTo((21 + 19) / 2, 9)
  })

  it('is refused where one neighbour is a dash', () => {
    expect(refusal(62.5, 51).message).toContain('dash')
    expect(refusal(92.5, 63).message).toContain('dash')
    // On the row of 80 °F only the two cells beside it count, though the row of 85 °F has a dash below them.
    expect(targetF(80, 59)).toBeCloseTo(6.5, 9)
  })

  it('falls as it gets hotter outside and rises with the wet bulb', () => {
    const outdoor = fc.double({ min: 40, max: 114, noNaN: true })
    const wetBulb = fc.double({ min: 50, max: 75, noNaN: true })
    fc.assert(
      fc.property(outdoor, wetBulb, (outdoorF, wetBulbF) => {
        try {
          const here = targetF(outdoorF, wetBulbF)
          expect(here).toBeGreaterThanOrEqual(5 - 1e-9)
          expect(targetF(outdoorF, wetBulbF + 1)).toBeGreaterThanOrEqual(here - 1e-9)
          expect(targetF(outdoorF + 1, wetBulbF)).toBeLessThanOrEqual(here + 1e-9)
        } catch (error) {
          expect(error).toBeInstanceOf(CalcError)
        }
      }),
      { numRuns: 500 },
    )
  })
})

describe('target superheat by the common formula, outside the table', () => {
  it.each([
    // (3 · WB − 80 − DB) / 2, worked by hand.
    [120, 76, 14],
    [35, 60, 32.5],
    [80, 78, 37],
    [60, 49, 3.5],
  ])('%d °F outdoors, %d °F wet bulb: %d °F', (outdoorF, wetBulbF, byHand) => {
    if (byHand < 5) {
      expect(refusal(outdoorF, wetBulbF).message).toContain('less than 5 °F')
      return
    }
    expect(targetF(outdoorF, wetBulbF)).toBeCloseTo(byHand, 9)
    const { method, sources } = targetSuperheat(kelvin(outdoorF), kelvin(wetBulbF))
    expect(method).toBe('formula')
    expect(sources.map((source) => source.mark)).toEqual(['common-practice'])
  })
})
