import { describe, expect, it } from 'vitest'
import { charging } from '../../shared/service/charging.ts'

describe('published limits', () => {
  it('takes 1 oz of the 1 to 2 oz that US Army TM 5-3805-290-23-1 allows', () => {
    const { result } = charging.run({ refrigerant: 'R-134a', labelCharge: '40 oz', units: 'us' })
    expect(result.band).toMatchObject({ low: { value: 2.438 }, high: { value: 2.563 } })
  })

  it('keeps RA3.2 (2013) at 55 °F and US Army TM 5-2420-230-24-1 at 70 °F', () => {
    const conditions = (ambient: string) =>
      charging
        .run({
          refrigerant: 'R-134a',
          labelCharge: '40 oz',
          judgeBy: 'superheat',
          machine: 'off-road',
          ambient,
        })
        .result.conditions.map((entry) => entry.met)
    expect(conditions('54.9 ±0 °F')).toEqual(['no', 'no'])
    expect(conditions('55 ±0 °F')).toEqual(['yes', 'no'])
    expect(conditions('70 ±0 °F')).toEqual(['yes', 'yes'])
  })
})
