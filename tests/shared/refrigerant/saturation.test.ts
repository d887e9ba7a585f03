import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  glide,
  latentHeat,
  refrigerant,
  refrigerants,
  saturatedDensity,
  saturatedEnthalpy,
  saturatedEntropy,
  saturationPressure,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const share = fc.double({ min: 0, max: 1, noNaN: true })
const LINES = ['bubble', 'dew'] as const

/** Rounding must not carry a share of a range past its end. */
const between = (low: number, high: number, a: number) =>
  Math.min(high, Math.max(low, low + (high - low) * a))
const pressureBetween = (low: number, high: number, a: number) =>
  Math.min(high, Math.max(low, low * (high / low) ** a))

describe.each(refrigerants())('saturation of $id', ({ id }) => {
  const r = refrigerant(id)

  it.each(LINES)('T → p → T comes back within 0.5 mK on the %s line', (line) => {
    const { fromK, toK } = r[line]
    fc.assert(
      fc.property(share, (a) => {
        const t = between(fromK, toK, a)
        // The pressure of an end may be rounded past the stored end: stay a hair inside.
        const { fromPa, toPa } = r[line]
        const p = Math.min(toPa, Math.max(fromPa, saturationPressure(r, t, line)))
        expect(Math.abs(saturationTemperature(r, p, line) - t)).toBeLessThan(5e-4)
      }),
    )
  })

  it.each(LINES)('p → T → p comes back within 2e-5 on the %s line', (line) => {
    const { fromPa, toPa, fromK, toK } = r[line]
    fc.assert(
      fc.property(share, (a) => {
        const p = pressureBetween(fromPa, toPa, a)
        const t = Math.min(toK, Math.max(fromK, saturationTemperature(r, p, line)))
        expect(Math.abs(saturationPressure(r, t, line) / p - 1)).toBeLessThan(2e-5)
      }),
    )
  })

  it.each(LINES)('pressure rises with temperature, and temperature with pressure (%s)', (line) => {
    const { fromK, toK, fromPa, toPa } = r[line]
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        fc.pre(high - low > 1e-3)
        const t = (x: number) => between(fromK, toK, x)
        expect(saturationPressure(r, t(high), line)).toBeGreaterThan(
          saturationPressure(r, t(low), line),
        )
        const p = (x: number) => pressureBetween(fromPa, toPa, x)
        expect(saturationTemperature(r, p(high), line)).toBeGreaterThan(
          saturationTemperature(r, p(low), line),
        )
      }),
    )
  })

  it('liquid thins and vapour thickens with temperature, liquid staying the denser', () => {
    fc.assert(
      fc.property(share, (a) => {
        const t = between(r.minimumTemperatureK, r.maximumTemperatureK - 0.5, a)
        const liquid = saturatedDensity(r, t, 'liquid')
        const vapour = saturatedDensity(r, t, 'vapour')
        expect(liquid).toBeGreaterThan(vapour)
        expect(saturatedDensity(r, t + 0.5, 'liquid')).toBeLessThan(liquid)
        expect(saturatedDensity(r, t + 0.5, 'vapour')).toBeGreaterThan(vapour)
      }),
    )
  })

  it('bubble pressure is at or above dew pressure', () => {
    fc.assert(
      fc.property(share, (a) => {
        const t = between(r.minimumTemperatureK, r.maximumTemperatureK, a)
        const bubble = saturationPressure(r, t, 'bubble')
        const dew = saturationPressure(r, t, 'dew')
        expect(bubble).toBeGreaterThanOrEqual(dew * (1 - 1e-6))
        if (r.info.kind === 'pure') expect(bubble).toBe(dew)
      }),
    )
  })

  it('starts enthalpy at 200 kJ/kg and entropy at 1 kJ/(kg K) for liquid at 0 °C (IIR)', () => {
    expect(Math.abs(saturatedEnthalpy(r, 273.15, 'liquid') - 200e3)).toBeLessThan(1)
    expect(Math.abs(saturatedEntropy(r, 273.15, 'liquid') - 1e3)).toBeLessThan(0.01)
  })

  it('has a latent heat above zero that falls with pressure, and a glide of its kind', () => {
    const cold = saturationPressure(r, Math.max(250, r.minimumTemperatureK + 1), 'dew')
    const warm = saturationPressure(r, 290, 'dew')
    expect(latentHeat(r, warm)).toBeGreaterThan(0)
    expect(latentHeat(r, cold)).toBeGreaterThan(latentHeat(r, warm))
    if (r.info.kind === 'pure') expect(glide(r, warm)).toBe(0)
    if (r.info.kind === 'zeotrope') expect(glide(r, warm)).toBeGreaterThan(0.1)
  })

  it.each(LINES)('answers at the very ends of its %s line', (line) => {
    const { fromK, toK, fromPa, toPa } = r[line]
    for (const [pressurePa, temperatureK] of [
      [fromPa, fromK],
      [toPa, toK],
    ] as const) {
      const found = saturationTemperature(r, pressurePa, line)
      expect(Math.abs(found - temperatureK)).toBeLessThan(5e-4)
      // What it gives can be asked of every other property.
      expect(saturationPressure(r, found, line)).toBeGreaterThan(0)
      expect(saturatedEnthalpy(r, found, line === 'bubble' ? 'liquid' : 'vapour')).toBeGreaterThan(
        0,
      )
    }
  })

  it('refuses every pressure and temperature outside its range by name', () => {
    const outside = fc.double().filter((x) => !(x >= r.dew.fromPa && x <= r.dew.toPa))
    fc.assert(
      fc.property(outside, (p) => {
        expect(() => saturationTemperature(r, p, 'dew')).toThrow(CalcError)
      }),
    )
    const outsideK = fc.double().filter((x) => !(x >= r.dew.fromK && x <= r.dew.toK))
    fc.assert(
      fc.property(outsideK, (t) => {
        expect(() => saturationPressure(r, t, 'dew')).toThrow(CalcError)
        expect(() => saturatedDensity(r, t, 'vapour')).toThrow(CalcError)
      }),
    )
  })
})

describe('what a refusal says', () => {
  const code = (run: () => unknown) => {
    const { code, message, hint } = refusalOf(run)
    return { code, text: message + hint }
  }
  const r134a = refrigerant('R-134a')
  const r744 = refrigerant('R-744')

  it.each([
    [
      'above the critical pressure',
      () => saturationTemperature(r134a, 5e6, 'dew'),
      'above-critical',
    ],
    ['R-744 on a hot day', () => saturationPressure(r744, 310, 'bubble'), 'above-critical'],
    [
      'R-744 at atmospheric pressure',
      () => saturationTemperature(r744, 101_325, 'dew'),
      'below-triple',
    ],
    [
      'R-744 colder than its triple point',
      () => saturationPressure(r744, 210, 'dew'),
      'below-triple',
    ],
    ['a deep vacuum', () => saturationTemperature(r134a, 70, 'dew'), 'out-of-range'],
    [
      'just under the critical pressure',
      () => saturationTemperature(r134a, 4.0592e6, 'dew'),
      'out-of-range',
    ],
    ['not a number', () => saturationTemperature(r134a, Number.NaN, 'dew'), 'out-of-range'],
    ['infinite pressure', () => saturationTemperature(r134a, Infinity, 'dew'), 'out-of-range'],
    ['zero pressure', () => saturationTemperature(r134a, 0, 'dew'), 'out-of-range'],
    ['absolute zero', () => saturationPressure(r134a, 0, 'dew'), 'out-of-range'],
  ])('%s is named (%#)', (_, run, expected) => {
    expect(code(run).code).toBe(expected)
    expect(code(run).text).not.toMatch(/undefined|Infinity|\[object/u)
  })
})
