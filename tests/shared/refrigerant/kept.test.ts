import { describe, expect, it } from 'vitest'
import { blendOf } from '../../../shared/refrigerant/blend.ts'
import { refrigerant, refrigerants } from '../../../shared/refrigerant/index.ts'
import { isotherm } from '../../../shared/refrigerant/isolines.ts'
import { propertyUncertainty } from '../../../shared/refrigerant/property-uncertainty.ts'
import { saturatedCurves } from '../../../shared/refrigerant/saturated-curves.ts'
import { twoPhaseDensity } from '../../../shared/refrigerant/two-phase.ts'

// What is made once is the same object the second time: made anew it would answer alike, and cost.

describe.each(refrigerants())('$id', ({ id, composition }) => {
  const r = refrigerant(id)
  const isBlend = composition.length > 1
  const kelvin = 0.8 * r.criticalTemperatureK

  it('is compiled as a mixture once, and only where it is one', () => {
    expect(blendOf(r)).toBe(blendOf(r))
    expect(blendOf(r) !== undefined).toBe(isBlend)
    expect(blendOf(r)?.z.reduce((sum, share) => sum + share, 0) ?? 1).toBeCloseTo(1, 12)
    expect(blendOf(r)?.fluid.components.map((part) => part.id) ?? []).toEqual(
      isBlend ? composition.map(({ substance }) => substance) : [],
    )
  })

  it('has its saturated curves, its boiling and its own uncertainty made once a state', () => {
    expect(saturatedCurves(r)).toBe(saturatedCurves(r))
    const window = { fromPa: r.dew.pressure(0.9 * kelvin), toPa: r.criticalPressurePa }
    const once = isotherm(r, kelvin, window).boiling
    expect(isotherm(r, kelvin, window).boiling).toBe(once)
    expect(isotherm(r, kelvin - 1, window).boiling).not.toBe(once)
    for (const line of ['bubble', 'dew'] as const) {
      const found = propertyUncertainty(r, kelvin, line)
      expect(propertyUncertainty(r, kelvin, line)).toBe(found)
      // another state, and the other line, are not the one that was asked last
      expect(propertyUncertainty(r, kelvin - 20, line)).not.toBe(found)
    }
  })

  it.runIf(isBlend)(
    'needs few solves for a density at a pressure, by the slope of its line',
    () => {
      for (const quality of [0.1, 0.5, 0.9]) {
        const work = { solves: 0 }
        twoPhaseDensity(r, { pressurePa: r.dew.pressure(kelvin) }, quality, work)
        // bubble and dew point from the curves' densities, and the split between them
        const once = { solves: 0 }
        twoPhaseDensity(r, { temperatureK: kelvin }, quality, once)
        expect(once.solves).toBe(3)
        // three for the first, and one for each step of the secant
        expect(work.solves).toBeLessThanOrEqual(7)
      }
    },
  )
})
