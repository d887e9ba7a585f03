import { describe, expect, it } from 'vitest'
import {
  density,
  enthalpy,
  glide,
  latentHeat,
  phaseAt,
  refrigerant,
  refrigerants,
  saturatedDensity,
  saturatedEnthalpy,
  saturationPressure,
  saturationTemperature,
} from '../../../shared/refrigerant/index.ts'
import { substanceData } from '../../../shared/substance/library.ts'
import { refusalOf } from '../../support/refusal.ts'

const all = refrigerants().map(({ id }) => id)
const pure = refrigerants()
  .filter(({ composition }) => composition.length === 1)
  .map(({ id }) => id)
const blends = all.filter((id) => !pure.includes(id))
const codeOf = (run: () => unknown) => refusalOf(run).code

describe.each(all)('the range of %s', (id) => {
  const r = refrigerant(id)
  const parts = r.info.composition.map(({ substance }) => substanceData(substance))

  it('is where all of its equations and both of its lines reach', () => {
    expect(r.minimumTemperatureK).toBe(Math.max(r.bubble.fromK, r.dew.fromK))
    expect(r.maximumTemperatureK).toBe(Math.min(r.bubble.toK, r.dew.toK))
    for (const { valid } of parts) {
      expect(r.equationMaximumK).toBeLessThanOrEqual(valid.maximumTemperatureK)
      expect(r.equationMaximumPa).toBeLessThanOrEqual(valid.maximumPressurePa)
    }
    expect(parts.map(({ valid }) => valid.maximumTemperatureK)).toContain(r.equationMaximumK)
    expect(parts.map(({ valid }) => valid.maximumPressurePa)).toContain(r.equationMaximumPa)
  })

  it('is answered to its ends, and refused a hair beyond them', () => {
    const { minimumTemperatureK: cold, equationMaximumK: hot, equationMaximumPa: dense } = r
    expect(phaseAt(r, cold, 1)).toBe('vapour')
    expect(phaseAt(r, hot, 1)).toBe('vapour')
    expect(phaseAt(r, hot, dense)).toBe('supercritical')
    expect(phaseAt(r, cold, dense)).toBe('liquid')
    for (const [kelvin, pascal] of [
      [cold - 0.001, 1],
      [hot + 0.001, 1],
      [hot, dense * 1.0001],
      [cold, dense * 1.0001],
    ] as const) {
      const { code, message } = refusalOf(() => phaseAt(r, kelvin, pascal))
      expect(code).toBe('out-of-range')
      expect(message).toContain(`outside the equation of state of ${id}`)
    }
    for (const [kelvin, pascal] of [
      [300, 0],
      [300, -1],
      [0, 1e5],
      [-300, 1e5],
    ] as const) {
      expect(refusalOf(() => phaseAt(r, kelvin, pascal)).message).toContain('is no state')
    }
  })

  it('has a phase on the line that a state within a millionth of it may be taken for', () => {
    const kelvin = (r.minimumTemperatureK + 0.9 * r.criticalTemperatureK) / 2
    for (const [phase, line, inwards] of [
      ['liquid', 'bubble', -1],
      ['vapour', 'dew', 1],
    ] as const) {
      const pascal = saturationPressure(r, kelvin, line)
      const at = (ppm: number) => pascal * (1 + inwards * ppm * 1e-6)
      expect(phaseAt(r, kelvin, at(-1.2))).toBe(phase)
      // Past the line of a pure one is the other phase, past that of a blend both of them.
      const [taken, not] = r.info.composition.length === 1 ? [0.8, 1.2] : [1.8, 2.3]
      expect(density(r, kelvin, at(taken), phase)).toBeGreaterThan(0)
      expect(codeOf(() => density(r, kelvin, at(not), phase))).toBe('two-phase')
      if (r.info.composition.length === 1) {
        expect(phaseAt(r, kelvin, at(0.8))).toBe('two-phase')
        expect(phaseAt(r, kelvin, at(1.2))).toBe(phase === 'liquid' ? 'vapour' : 'liquid')
      }
    }
  })

  it('says what a state is when another phase of it is asked for', () => {
    const kelvin = (r.minimumTemperatureK + 0.9 * r.criticalTemperatureK) / 2
    const said = (pascal: number, phase: 'liquid' | 'vapour') =>
      refusalOf(() => density(r, kelvin, pascal, phase))
    const thin = said(0.5 * saturationPressure(r, kelvin, 'dew'), 'liquid')
    expect(thin.message).toContain(`${id} is vapour, not liquid`)
    expect(thin.hint).toContain('ask for vapour')
    const dense = said(1.5 * saturationPressure(r, kelvin, 'bubble'), 'vapour')
    expect(dense.message).toContain(`${id} is liquid, not vapour`)
    expect(dense.hint).toContain('ask for liquid')
    const [low, high] = [
      saturationPressure(r, kelvin, 'dew'),
      saturationPressure(r, kelvin, 'bubble'),
    ]
    if (high / low > 1.0001) {
      const boiling = said((low + high) / 2, 'liquid')
      expect(boiling.message).toContain(`${id} is boiling, not liquid`)
      expect(boiling.hint).toContain('how much of it is vapour')
    }
  })
})

describe.each(pure)('%s near its critical point', (id) => {
  const r = refrigerant(id)
  const { criticalTemperatureK: tc, criticalPressurePa: pc } = r
  // The sliver that the curves leave out, a ten-thousandth below the critical temperature.
  const sliver = (r.maximumTemperatureK + tc) / 2

  it('is told apart by pressure in the sliver that the curves leave out, but not right at the line', () => {
    expect(phaseAt(r, sliver, 1.01 * pc)).toBe('liquid')
    expect(phaseAt(r, sliver, 0.99 * r.dew.toPa)).toBe('vapour')
    const { code, message } = refusalOf(() => phaseAt(r, sliver, (r.dew.toPa + pc) / 2))
    expect(code).toBe('out-of-range')
    expect(message).toContain('too near')
    expect(density(r, sliver, 1.01 * pc, 'liquid')).toBeGreaterThan(
      density(r, sliver, 0.99 * r.dew.toPa, 'vapour'),
    )
  })

  it('is vapour when hot, supercritical when dense too', () => {
    expect(phaseAt(r, tc, 0.999 * pc)).toBe('vapour')
    expect(phaseAt(r, tc, pc)).toBe('supercritical')
    expect(phaseAt(r, tc + 5, pc)).toBe('supercritical')
    expect(phaseAt(r, tc - 5, 1.05 * pc)).toBe('liquid')
  })
})

describe.each(blends)('%s near its critical point', (id) => {
  const r = refrigerant(id)
  it('is told apart only where its lines say so', () => {
    const { criticalTemperatureK: tc, criticalPressurePa: pc } = r
    expect(phaseAt(r, tc + 1, 1.001 * pc)).toBe('supercritical')
    expect(phaseAt(r, tc + 1, 0.9 * r.dew.toPa)).toBe('vapour')
    expect(codeOf(() => phaseAt(r, tc + 1e-6, (r.dew.toPa + pc) / 2))).toBe('out-of-range')
    expect(codeOf(() => phaseAt(r, (Math.max(r.bubble.toK, r.dew.toK) + tc) / 2, 1.001 * pc))).toBe(
      'out-of-range',
    )
  })
})

describe('saturation that cannot be', () => {
  it('is below the triple point of R-744 alone: the others are liquid down to where the data begin', () => {
    expect(all.filter((id) => refrigerant(id).startsAtTriplePoint)).toEqual(['R-744'])
  })

  it.each(all)('of %s is refused by what it is', (id) => {
    const r = refrigerant(id)
    for (const line of ['bubble', 'dew'] as const) {
      const { fromK, toK, fromPa, toPa } = r[line]
      const { criticalTemperatureK: tc, criticalPressurePa: pc } = r
      const cold = id === 'R-744' ? 'below-triple' : 'out-of-range'
      const byPressure = (pa: number) => refusalOf(() => saturationTemperature(r, pa, line))
      const byTemperature = (k: number) => refusalOf(() => saturationPressure(r, k, line))
      expect(byPressure(pc)).toMatchObject({ code: 'above-critical' })
      expect(byPressure(pc).message).toContain(`${id} does not condense`)
      expect(byPressure((toPa + pc) / 2)).toMatchObject({ code: 'out-of-range' })
      expect(byPressure((toPa + pc) / 2).message).toContain('too near')
      expect(byPressure(fromPa * 0.999).code).toBe(cold)
      expect(byPressure(fromPa * 0.999).message).toMatch(
        cold === 'below-triple' ? /solid, not liquid/u : /below the range/u,
      )
      expect(byPressure(0).message).toContain('absolute pressure is above zero')
      expect(byPressure(-1).message).toContain('absolute pressure is above zero')
      expect(byTemperature(tc)).toMatchObject({ code: 'above-critical' })
      expect(byTemperature(tc).message).toContain(`${id} does not condense`)
      expect(byTemperature((toK + tc) / 2).message).toContain('too near')
      expect(byTemperature(fromK - 0.01).code).toBe(cold)
      expect(byTemperature(fromK - 0.01).message).toMatch(
        cold === 'below-triple' ? /is solid/u : /below the range/u,
      )
      expect(byTemperature(0).message).toContain('is not a temperature')
      expect(byTemperature(Number.NaN).message).toContain('is not a temperature')
      // Rounding at an end is forgiven: a ten-millionth, and a microkelvin.
      expect(saturationTemperature(r, toPa * (1 + 0.9e-7), line)).toBeLessThanOrEqual(toK)
      expect(saturationTemperature(r, fromPa * (1 - 0.9e-7), line)).toBeGreaterThanOrEqual(fromK)
      expect(() => saturationTemperature(r, toPa * (1 + 1.3e-7), line)).toThrow()
      expect(() => saturationTemperature(r, fromPa * (1 - 1.3e-7), line)).toThrow()
      expect(saturationPressure(r, toK + 0.9e-6, line)).toBeGreaterThan(0)
      expect(saturationPressure(r, fromK - 0.9e-6, line)).toBeGreaterThan(0)
      expect(() => saturationPressure(r, toK + 1.3e-6, line)).toThrow()
      expect(() => saturationPressure(r, fromK - 1.3e-6, line)).toThrow()
    }
  })
})

describe('what boiling takes', () => {
  it.each(all)('of %s: both lines at one pressure, each with its own temperature', (id) => {
    const r = refrigerant(id)
    const pascal = saturationPressure(r, 290, 'dew')
    const [boils, dry] = [
      saturationTemperature(r, pascal, 'bubble'),
      saturationTemperature(r, pascal, 'dew'),
    ]
    expect(glide(r, pascal)).toBeCloseTo(Math.max(0, dry - boils), 12)
    expect(latentHeat(r, pascal)).toBeCloseTo(
      saturatedEnthalpy(r, dry, 'vapour') - saturatedEnthalpy(r, boils, 'liquid'),
      6,
    )
    // Each is the property of its own line.
    expect(saturatedDensity(r, dry, 'vapour')).toBe(r.dew.density(dry))
    expect(saturatedDensity(r, boils, 'liquid')).toBe(r.bubble.density(boils))
    expect(enthalpy(r, dry + 20, pascal, 'vapour')).toBeGreaterThan(
      saturatedEnthalpy(r, dry, 'vapour'),
    )
  })
})
