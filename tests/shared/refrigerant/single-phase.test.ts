import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  density,
  enthalpy,
  entropy,
  phaseAt,
  refrigerant,
  refrigerants,
  saturatedDensity,
  saturatedEnthalpy,
  saturatedEntropy,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { pressure } from '../../../shared/substance/state.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })

describe.each(refrigerants())('single phases of $id', ({ id }) => {
  const r = refrigerant(id)
  const warmest = 0.97 * r.criticalTemperatureK
  const within = (a: number) => r.minimumTemperatureK + (warmest - r.minimumTemperatureK) * a

  it('meet the saturation curves on the line', () => {
    fc.assert(
      fc.property(share, (a) => {
        const t = within(a)
        const bubble = saturationPressure(r, t, 'bubble')
        const dew = saturationPressure(r, t, 'dew')
        expect(
          Math.abs(density(r, t, bubble, 'liquid') / saturatedDensity(r, t, 'liquid') - 1),
        ).toBeLessThan(2e-6)
        expect(
          Math.abs(density(r, t, dew, 'vapour') / saturatedDensity(r, t, 'vapour') - 1),
        ).toBeLessThan(2e-6)
        expect(
          Math.abs(enthalpy(r, t, bubble, 'liquid') - saturatedEnthalpy(r, t, 'liquid')),
        ).toBeLessThan(2)
        expect(
          Math.abs(enthalpy(r, t, dew, 'vapour') - saturatedEnthalpy(r, t, 'vapour')),
        ).toBeLessThan(2)
        expect(
          Math.abs(entropy(r, t, bubble, 'liquid') - saturatedEntropy(r, t, 'liquid')),
        ).toBeLessThan(0.01)
        expect(
          Math.abs(entropy(r, t, dew, 'vapour') - saturatedEntropy(r, t, 'vapour')),
        ).toBeLessThan(0.01)
      }),
      { numRuns: 40 },
    )
  })

  it('are told apart: liquid above the bubble pressure, vapour below the dew pressure', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const t = within(a)
        const liquid = saturationPressure(r, t, 'bubble') * (1.001 + b)
        const vapour = saturationPressure(r, t, 'dew') * (0.999 - 0.9 * b)
        fc.pre(liquid < r.equationMaximumPa)
        expect(phaseAt(r, t, liquid)).toBe('liquid')
        expect(phaseAt(r, t, vapour)).toBe('vapour')
        expect(() => density(r, t, liquid, 'vapour')).toThrow(CalcError)
        expect(() => density(r, t, vapour, 'liquid')).toThrow(CalcError)
        expect(density(r, t, liquid, 'liquid')).toBeGreaterThan(density(r, t, vapour, 'vapour'))
        // Superheat raises enthalpy and thins the vapour.
        const hotter = Math.min(t + 10, r.equationMaximumK)
        expect(enthalpy(r, hotter, vapour, 'vapour')).toBeGreaterThan(
          enthalpy(r, t, vapour, 'vapour'),
        )
        expect(density(r, hotter, vapour, 'vapour')).toBeLessThan(density(r, t, vapour, 'vapour'))
      }),
      { numRuns: 40 },
    )
  })

  it('give a finite number or a named refusal for any temperature and pressure', () => {
    const t = fc.oneof(fc.double(), fc.double({ min: 150, max: 600, noNaN: true }))
    const p = fc.oneof(fc.double(), fc.double({ min: 1, max: 1e8, noNaN: true }))
    const phase = fc.constantFrom('liquid' as const, 'vapour' as const)
    fc.assert(
      fc.property(t, p, phase, (temperature, pressure, which) => {
        for (const property of [density, enthalpy, entropy]) {
          try {
            const value = property(r, temperature, pressure, which)
            expect(Number.isFinite(value)).toBe(true)
          } catch (error) {
            expect(error).toBeInstanceOf(CalcError)
            expect((error as CalcError).code).not.toBe('no-convergence')
          }
        }
      }),
      { numRuns: 200 },
    )
  })
})

describe('above the critical point of a blend', () => {
  // The temperature that its equation is reduced by may lie above the critical one.
  const blends = refrigerants().filter(({ composition }) => composition.length > 1)
  it.each(blends)('$id has one density, asked for as liquid or as vapour', ({ id }) => {
    const r = refrigerant(id)
    for (const beyond of [0.5, 2, 5, 10]) {
      const t = r.criticalTemperatureK + beyond
      let thinner = 0
      for (const ratio of [1.001, 1.05, 1.2, 1.6, 2.4]) {
        const p = r.criticalPressurePa * ratio
        expect(phaseAt(r, t, p)).toBe('supercritical')
        const asLiquid = density(r, t, p, 'liquid')
        expect(density(r, t, p, 'vapour')).toBe(asLiquid)
        expect(asLiquid).toBeGreaterThan(thinner)
        expect(pressure(r.model(), t, asLiquid / r.molarMass) / p).toBeCloseTo(1, 9)
        thinner = asLiquid
      }
    }
  })
})

describe('phaseAt', () => {
  const r = refrigerant('R-744')
  it.each([
    [320, 9e6, 'supercritical'],
    [320, 5e6, 'vapour'],
    [290, 9e6, 'liquid'],
    [290, 3e6, 'vapour'],
    [290, 6e6, 'liquid'],
  ] as const)('of R-744 at %d K and %d Pa is %s', (t, p, phase) => {
    expect(phaseAt(r, t, p)).toBe(phase)
  })

  it('is two-phase on the line of a pure substance', () => {
    expect(phaseAt(r, 280, saturationPressure(r, 280, 'dew'))).toBe('two-phase')
  })
})
