import { describe, expect, it } from 'vitest'
import { refrigerant } from '../../shared/refrigerant/index.ts'
import { hoseDensity, hoseVolume } from '../../shared/service/charging/hose.ts'
import { charging } from '../../shared/service/charging.ts'

const FOOT = 0.3048
const INCH = 0.0254
const fahrenheit = (value: number) => ((value + 459.67) * 5) / 9

describe('what a hose holds, CoolProp 8.0.0 as an independent program', () => {
  const r = refrigerant('R-134a')

  // Volume per foot and R-134a in it, printed to one or two figures: mL/ft, g/ft liquid at 120 °F.
  it.each([
    [5 / 16, 15.1, 16.7],
    [13 / 32, 25.5, 28.2],
    [1 / 2, 38.6, 42.8],
    [5 / 8, 60.3, 66.8],
  ])('%d in bore: %d mL/ft, %d g/ft', (bore, millilitres, grams) => {
    const space = hoseVolume(bore * INCH, FOOT)
    expect(Math.abs(space * 1e6 - millilitres)).toBeLessThan(0.06)
    const held = space * hoseDensity(r, 'liquid', fahrenheit(120), undefined) * 1e3
    expect(Math.abs(held - grams)).toBeLessThan(0.06)
  })

  it('a 72 in hose of 1/4 in bore: 58 mL, about 70 g of liquid at 77 °F, about 2 g of vapour', () => {
    const space = hoseVolume(INCH / 4, 72 * INCH)
    expect(space * 1e6).toBeCloseTo(58, 0)
    expect(space * hoseDensity(r, 'liquid', fahrenheit(77), undefined) * 1e3).toBeCloseTo(70, 0)
    expect(space * hoseDensity(r, 'vapour', fahrenheit(77), undefined) * 1e3).toBeCloseTo(2, 0)
  })
})

describe('published limits', () => {
  it('takes 1 oz of the 1 to 2 oz that US Army TM 5-3805-290-23-1 allows', () => {
    const { result } = charging.run({ refrigerant: 'R-134a', charge: '40 oz', units: 'us' })
    expect(result.band).toMatchObject({ low: { value: 2.438 }, high: { value: 2.563 } })
  })

  it('keeps RA3.2 (2013) at 55 °F and US Army TM 5-2420-230-24-1 at 70 °F', () => {
    const conditions = (outdoorTemperature: string) =>
      charging
        .run({
          refrigerant: 'R-134a',
          charge: '40 oz',
          judgeBy: 'superheat',
          equipment: 'vehicle',
          outdoorTemperature,
        })
        .result.conditions.map((entry) => entry.met)
    expect(conditions('54.9 °F')).toEqual(['no', 'no'])
    expect(conditions('55 °F')).toEqual(['yes', 'no'])
    expect(conditions('70 °F')).toEqual(['yes', 'yes'])
  })
})
