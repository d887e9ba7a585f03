import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  density,
  enthalpy,
  entropy,
  latentHeat,
  refrigerant,
  saturatedCurves,
  saturatedEnthalpy,
  saturatedEntropy,
  saturationPressure,
  saturationTemperature,
  stateAtPressure,
  stateWithEnthalpy,
  stateWithEntropy,
} from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const NAMES = ['R-134a', 'R-1234yf', 'R-410A', 'R-407C', 'R-290'] as const

/** A single-phase state in the range of service: vapour up to 60 K above its line, liquid down to 40 K below. */
const anyState = fc
  .record({
    name: fc.constantFrom(...NAMES),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    away: fc.double({ min: 0.05, max: 1, noNaN: true }),
    phase: fc.constantFrom('liquid' as const, 'vapour' as const),
  })
  .map(({ name, share, away, phase }) => {
    const fluid = refrigerant(name)
    const lineK = 235 + share * (0.94 * fluid.criticalTemperatureK - 235)
    const line = phase === 'liquid' ? 'bubble' : 'dew'
    const pressurePa = saturationPressure(fluid, lineK, line)
    const temperatureK =
      phase === 'vapour' ? lineK + 60 * away : lineK - away * Math.min(40, lineK - 220)
    return { name, phase, pressurePa, temperatureK }
  })

describe('one state in one call', () => {
  it('gives what the single properties give', () => {
    fc.assert(
      fc.property(anyState, ({ name, phase, pressurePa, temperatureK }) => {
        const fluid = refrigerant(name)
        const state = stateAtPressure(fluid, temperatureK, pressurePa, phase)
        const given = [fluid, temperatureK, pressurePa, phase] as const
        expect(Math.abs(state.density / density(...given) - 1)).toBeLessThan(1e-12)
        expect(Math.abs(state.enthalpy - enthalpy(...given))).toBeLessThan(1e-6)
        expect(Math.abs(state.entropy - entropy(...given))).toBeLessThan(1e-9)
      }),
      { numRuns: 200 },
    )
  })

  it('has the heat capacity that its enthalpy rises by along the isobar', () => {
    fc.assert(
      fc.property(anyState, ({ name, phase, pressurePa, temperatureK }) => {
        const fluid = refrigerant(name)
        const at = (kelvin: number) => stateAtPressure(fluid, kelvin, pressurePa, phase)
        const step = 0.01
        const slope = (at(temperatureK + step).enthalpy - at(temperatureK - step).enthalpy) / 0.02
        expect(Math.abs((at(temperatureK).heatCapacity ?? 0) / slope - 1)).toBeLessThan(1e-5)
      }),
      { numRuns: 200 },
    )
  })

  it('is found again from its pressure and enthalpy, and from its pressure and entropy', () => {
    fc.assert(
      fc.property(anyState, ({ name, phase, pressurePa, temperatureK }) => {
        const fluid = refrigerant(name)
        const state = stateAtPressure(fluid, temperatureK, pressurePa, phase)
        for (const found of [
          stateWithEnthalpy(fluid, pressurePa, state.enthalpy),
          stateWithEntropy(fluid, pressurePa, state.entropy),
        ]) {
          expect(Math.abs(found.temperatureK - temperatureK)).toBeLessThan(1e-6)
          expect(Math.abs(found.density / state.density - 1)).toBeLessThan(1e-8)
          expect(found.quality).toBeUndefined()
        }
      }),
      { numRuns: 300 },
    )
  })

  it.each(['R-134a', 'R-1234yf', 'R-410A'])('%s is a mixture by mass where it boils', (name) => {
    const fluid = refrigerant(name)
    const pressurePa = saturationPressure(fluid, 280, 'bubble')
    const liquid = saturatedEnthalpy(fluid, 280, 'liquid')
    const heat = latentHeat(fluid, pressurePa)
    const state = stateWithEnthalpy(fluid, pressurePa, liquid + 0.3 * heat)
    expect(state.quality).toBeCloseTo(0.3, 5)
    expect(state.temperatureK).toBeGreaterThan(279.99)
    expect(state.temperatureK).toBeLessThan(saturationTemperature(fluid, pressurePa, 'dew') + 1e-3)
    // boiling at constant pressure: T ds = dh
    const more = stateWithEnthalpy(fluid, pressurePa, liquid + 0.5 * heat)
    const byEntropy =
      ((more.entropy - state.entropy) * (more.temperatureK + state.temperatureK)) / 2
    expect(byEntropy / (0.2 * heat)).toBeCloseTo(1, 3)
    const dewK = saturationTemperature(fluid, pressurePa, 'dew')
    const volume = 0.3 / fluid.dew.density(dewK) + 0.7 / fluid.bubble.density(280)
    expect(state.density * volume).toBeCloseTo(1, 3)
  })

  it('refuses a mean temperature for a blend that boils over a glide', () => {
    const fluid = refrigerant('R-407C')
    const pressurePa = saturationPressure(fluid, 280, 'bubble')
    const inside = saturatedEnthalpy(fluid, 280, 'liquid') + 0.5 * latentHeat(fluid, pressurePa)
    expect(refusalOf(() => stateWithEnthalpy(fluid, pressurePa, inside))).toMatchObject({
      code: 'two-phase',
    })
  })
})

describe.each(NAMES)('saturated curves of %s', (name) => {
  const fluid = refrigerant(name)
  const curves = saturatedCurves(fluid)
  const temperatures = Array.from(
    { length: 301 },
    (_, i) =>
      fluid.minimumTemperatureK +
      (i / 300) * (0.98 * fluid.criticalTemperatureK - fluid.minimumTemperatureK),
  )

  it('keep to the equation within 1e-6 of the latent heat', () => {
    const heat = latentHeat(fluid, saturationPressure(fluid, 280, 'bubble'))
    for (const kelvin of temperatures) {
      for (const phase of ['liquid', 'vapour'] as const) {
        const line = curves[phase]
        const gap = line.enthalpy(kelvin) - saturatedEnthalpy(fluid, kelvin, phase)
        expect(Math.abs(gap)).toBeLessThan(1e-6 * heat)
        const entropyGap = line.entropy(kelvin) - saturatedEntropy(fluid, kelvin, phase)
        expect(Math.abs(entropyGap)).toBeLessThan((1e-6 * heat) / 280)
      }
    }
  })

  it('have the heat capacity of the single phase beside the line', () => {
    for (const kelvin of temperatures.slice(30, 250)) {
      for (const phase of ['liquid', 'vapour'] as const) {
        const line = phase === 'liquid' ? 'bubble' : 'dew'
        const pressurePa = saturationPressure(fluid, kelvin, line)
        const off = phase === 'liquid' ? -0.02 : 0.02
        const state = stateAtPressure(fluid, kelvin + off, pressurePa, phase)
        const near = state.heatCapacity ?? 0
        expect(Math.abs(curves[phase].heatCapacity(kelvin) / near - 1)).toBeLessThan(5e-3)
      }
    }
  })
})
