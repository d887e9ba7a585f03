import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type AtRest, atRest } from '../../../shared/physics/at-rest.ts'
import { mostOf, widthOf } from '../../../shared/physics/rest-band.ts'
import {
  contentsAt,
  densityUncertainty,
  refrigerant,
  refrigerants,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { propertyUncertainty } from '../../../shared/refrigerant/property-uncertainty.ts'
import { refusalOf } from '../../support/refusal.ts'

const K = 298
const lines = (id: string) => {
  const r = refrigerant(id)
  return {
    r,
    bubble: saturationPressure(r, K, 'bubble'),
    dew: saturationPressure(r, K, 'dew'),
  }
}

describe('a pressure at rest against the lines', () => {
  const { r, bubble, dew } = lines('R-407C')
  const state = (pascal: number, plusMinus = 1000) =>
    atRest(r, { si: pascal, plusMinus }, { si: K, plusMinus: 0.1 })

  it('is below, between or above the lines of a blend, and not to be told near one', () => {
    expect(state(dew - 40_000).state).toBe('below')
    expect(state((bubble + dew) / 2).state).toBe('between')
    expect(state(bubble + 40_000).state).toBe('above')
    expect(state(dew).state).toBe('cannot-tell')
    expect(state(bubble).state).toBe('cannot-tell')
    expect(state((bubble + dew) / 2, 200_000).state).toBe('cannot-tell')
  })

  it('is measured from the nearer line', () => {
    expect(state(dew - 40_000)).toMatchObject({
      from: 'dew',
      off: { si: expect.closeTo(-40_000, 3) },
    })
    expect(state(bubble + 40_000)).toMatchObject({
      from: 'bubble',
      off: { si: expect.closeTo(40_000, 3) },
    })
    expect(state(dew + 1000)).toMatchObject({ from: 'dew', off: { si: expect.closeTo(1000, 3) } })
    expect(state(bubble - 1000)).toMatchObject({
      from: 'bubble',
      off: { si: expect.closeTo(-1000, 3) },
    })
  })

  it('of a pure refrigerant, an azeotrope or near one is at saturation inside the band', () => {
    for (const id of ['R-134a', 'R-507A', 'R-410A']) {
      const found = lines(id)
      const at = (pascal: number) =>
        atRest(found.r, { si: pascal, plusMinus: 5000 }, { si: K, plusMinus: 0.1 }).state
      expect(at(found.bubble + 2000)).toBe('at')
      expect(at(found.dew - 2000)).toBe('at')
      expect(at(found.bubble + 40_000)).toBe('above')
      expect(at(found.dew - 40_000)).toBe('below')
    }
  })

  it('makes up its band of gauge, thermometer and property, in quadrature', () => {
    const pure = lines('R-134a')
    const found = atRest(pure.r, { si: 7e5, plusMinus: 7000 }, { si: K, plusMinus: 0.5 })
    const slope =
      (saturationPressure(pure.r, K + 0.5, 'dew') - saturationPressure(pure.r, K - 0.5, 'dew')) / 2
    const property = propertyUncertainty(pure.r, K, 'bubble').pressure * pure.bubble
    expect(found.parts).toEqual({
      pressure: 7000,
      temperature: expect.closeTo(slope, 6),
      contents: 0,
      property: expect.closeTo(property, 6),
    })
    expect(found.off?.plusMinus).toBeCloseTo(Math.hypot(7000, slope, property), 6)
    expect(found.bubble?.plusMinus).toBeCloseTo(Math.hypot(slope, property), 6)
    expect(found.dew?.si).toBeCloseTo(pure.dew, 6)
  })

  it.each([
    ['pressure', { si: 7e5, plusMinus: 30_000 }, { si: K, plusMinus: 0.2 }, 'R-134a'],
    ['temperature', { si: 7e5, plusMinus: 2000 }, { si: K, plusMinus: 1 }, 'R-134a'],
    ['property', { si: 7e5, plusMinus: 2000 }, { si: K, plusMinus: 0.2 }, 'R-409A'],
  ] as const)('names what widens it most: %s', (most, pressure, temperature, id) => {
    expect(atRest(refrigerant(id), pressure, temperature).most).toBe(most)
  })

  it('says of a blend of estimated pairs only what its own uncertainty allows', () => {
    const { r: estimated, bubble: saturated } = lines('R-409A')
    const exact = { si: K, plusMinus: 0 }
    // 1.6 K is 4 to 5 % in pressure
    expect(atRest(estimated, { si: 1.03 * saturated, plusMinus: 0 }, exact).state).toBe(
      'cannot-tell',
    )
    expect(atRest(estimated, { si: 1.07 * saturated, plusMinus: 0 }, exact).state).toBe('above')
    expect(atRest(r, { si: 1.03 * bubble, plusMinus: 0 }, exact).state).toBe('above')
  })
})

describe('a pressure at rest against its contents', () => {
  const { r, bubble, dew } = lines('R-407C')
  const volume = { si: 0.02 }
  const judged = (pascal: number, kg: number, more: { mass?: number; volume?: number } = {}) =>
    atRest(
      r,
      { si: pascal, plusMinus: 2000 },
      { si: K, plusMinus: 0.1 },
      { mass: { si: kg, plusMinus: more.mass }, volume: { si: 0.02, plusMinus: more.volume } },
    )

  it('tells a part-full blend from one with air, where the lines cannot', () => {
    const expected = contentsAt(r, K, 3 / volume.si).pressurePa ?? 0
    expect(expected).toBeGreaterThan(dew)
    expect(expected).toBeLessThan(bubble)
    expect(judged(expected, 3)).toMatchObject({
      state: 'at',
      expected: { si: expected },
      off: { si: 0 },
    })
    expect(judged(expected + 30_000, 3).state).toBe('above')
    expect(judged(expected - 30_000, 3).state).toBe('below')
  })

  it('takes the ± of mass and volume into the band', () => {
    const tight = judged(1.2e6, 3)
    const loose = judged(1.2e6, 3, { mass: 0.3 })
    expect(tight.parts.contents).toBe(0)
    const density = (kg: number) => contentsAt(r, K, kg / volume.si).pressurePa ?? 0
    expect(loose.parts.contents).toBeCloseTo((density(3.3) - density(2.7)) / 2, 0)
    const both = judged(1.2e6, 3, { mass: 0.3, volume: 0.002 })
    expect(both.parts.contents / loose.parts.contents).toBeCloseTo(Math.SQRT2, 1)
    expect(both.off?.plusMinus).toBeCloseTo(Math.hypot(...Object.values(both.parts)), 6)
  })

  it('makes up its band of gauge, thermometer, contents and property', () => {
    const { parts, expected } = judged(1.2e6, 3, { mass: 0.3 })
    const at = (kelvin: number) => contentsAt(r, kelvin, 3 / volume.si).pressurePa ?? 0
    expect(parts.pressure).toBe(2000)
    expect(parts.temperature).toBeCloseTo((at(K + 0.1) - at(K - 0.1)) / 2, 1)
    // 0.5 % of a published HFC blend
    expect(parts.property).toBeCloseTo(0.005 * at(K), -2)
    expect(expected?.plusMinus).toBeCloseTo(
      Math.hypot(parts.temperature, parts.contents, parts.property),
      6,
    )
  })

  it('says how much of it is liquid, by mass and by volume', () => {
    for (const id of ['R-407C', 'R-134a']) {
      const fluid = refrigerant(id)
      const nearlyFull = 0.9 * fluid.bubble.density(K)
      const found = contentsAt(fluid, K, nearlyFull)
      // densities of the phases differ from those of the lines by little
      const byLines = (1 - found.quality) * (nearlyFull / fluid.bubble.density(K))
      expect(Math.abs(found.liquidShare - byLines)).toBeLessThan(0.01)
      expect(found.liquidShare).toBeGreaterThan(0.85)
      expect(found.quality).toBeLessThan(0.02)
    }
  })

  it('takes the property of vapour alone by its density', () => {
    const { parts, expected } = judged(4e5, 0.4)
    expect(parts.property / (expected?.si ?? 0)).toBeCloseTo(densityUncertainty(r, 'vapour'), 9)
  })

  it('refuses contents beyond what the equation of state covers', () => {
    const dense = { mass: { si: 5 }, volume: { si: 0.003 } }
    const refused = refusalOf(() => atRest(refrigerant('R-744'), { si: 6.5e6 }, { si: 310 }, dense))
    expect(refused.code).toBe('out-of-range')
  })

  it('gives the pressure of the vapour where no liquid is left', () => {
    const found = judged(4e5, 0.4)
    expect(found).toMatchObject({ holds: 'vapour', quality: 1, liquidShare: 0 })
    // thinner than its ideal pressure by no more than a tenth
    const ideal = ((0.4 / 0.02) * 8.314462618 * K) / r.molarMass
    expect((found.expected?.si ?? 0) / ideal).toBeGreaterThan(0.88)
    expect((found.expected?.si ?? 0) / ideal).toBeLessThan(0.97)
  })

  it('names a space full of liquid and judges no pressure there', () => {
    const found = judged(5e6, 25)
    expect(found).toMatchObject({ state: 'liquid-full', holds: 'liquid-full', most: 'contents' })
    expect(found.off).toBeUndefined()
    expect(found.expected).toBeUndefined()
    // nothing but the gauge is behind what little is said there
    expect(found.parts).toMatchObject({ temperature: 0, contents: 0, property: 0 })
    expect(found.parts.pressure).toBeGreaterThan(0)
  })

  it('cannot tell a pressure above where the mass may just as well fill it', () => {
    const almost = 0.995 * r.bubble.density(K) * volume.si
    expect(judged(2e6, almost).state).toBe('above')
    expect(judged(2e6, almost, { mass: 0.5 })).toMatchObject({
      state: 'cannot-tell',
      most: 'contents',
    })
  })

  it('reaches beyond the critical point, where there are no lines', () => {
    const found = atRest(
      refrigerant('R-744'),
      { si: 6.5e6 },
      { si: 310 },
      { mass: { si: 1 }, volume: { si: 0.006 } },
    )
    expect(found).toMatchObject({ holds: 'supercritical' })
    expect(found.bubble).toBeUndefined()
    expect(refusalOf(() => atRest(refrigerant('R-744'), { si: 6.5e6 }, { si: 310 })).code).toBe(
      'above-critical',
    )
  })

  it('counts its work: three solves at first, one beside a state near by, none for a pure one', () => {
    const work = { solves: 0 }
    const first = contentsAt(r, K, 150, undefined, work)
    expect(work.solves).toBe(3)
    contentsAt(r, K + 0.5, 152, first, work)
    expect(work.solves).toBe(4)
    contentsAt(refrigerant('R-134a'), K, 150, undefined, work)
    expect(work.solves).toBe(4)
  })
})

describe('readings that say nothing', () => {
  const r = refrigerant('R-134a')
  it.each([
    ['pressure', { si: 1000, plusMinus: 2000 }, { si: K }, undefined],
    ['pressure', { si: 0 }, { si: K }, undefined],
    ['temperature', { si: 7e5 }, { si: Number.NaN }, undefined],
    ['contents', { si: 7e5 }, { si: K }, { mass: { si: 0 }, volume: { si: 1 } }],
    ['volume', { si: 7e5 }, { si: K }, { mass: { si: 1 }, volume: { si: 1, plusMinus: 1 } }],
  ] as const)('are refused by the field: %s', (field, pressure, temperature, contents) => {
    const refused = refusalOf(() => atRest(r, pressure, temperature, contents))
    expect(refused).toMatchObject({ code: 'bad-input', path: [field] })
  })
})

const OPPOSITE = new Set([
  'above below',
  'below above',
  'between above',
  'above between',
  'between below',
  'below between',
])

describe('whatever the refrigerant and the reading', () => {
  const id = fc.constantFrom(...refrigerants().map((info) => info.id))
  const share = fc.double({ min: 0.05, max: 0.95, noNaN: true })
  const factor = fc.double({ min: 0.8, max: 1.2, noNaN: true })
  const widths = fc.record({
    pressure: fc.double({ min: 0, max: 5e4, noNaN: true }),
    temperature: fc.double({ min: 0, max: 3, noNaN: true }),
    mass: fc.double({ min: 0, max: 0.1, noNaN: true }),
  })
  const tighter = fc.double({ min: 0, max: 1, noNaN: true })
  const fill = fc.option(fc.double({ min: 0.001, max: 0.99, noNaN: true }), { nil: undefined })

  it('a tighter ± never reverses a verdict nor makes it one that cannot be told', () => {
    fc.assert(
      fc.property(id, share, factor, widths, tighter, fill, (name, along, f, w, t, filled) => {
        const r = refrigerant(name)
        const { minimumTemperatureK: from, maximumTemperatureK: to } = r
        const kelvin = from + along * (0.97 * to - from)
        const density =
          filled === undefined
            ? undefined
            : r.dew.density(kelvin) * (r.bubble.density(kelvin) / r.dew.density(kelvin)) ** filled
        const judge = (scale: number): AtRest =>
          atRest(
            r,
            {
              si: f * r.bubble.pressure(kelvin),
              plusMinus: scale * Math.min(w.pressure, 0.5 * f * r.bubble.pressure(kelvin)),
            },
            { si: kelvin, plusMinus: scale * w.temperature },
            density === undefined
              ? undefined
              : { mass: { si: density, plusMinus: scale * w.mass * density }, volume: { si: 1 } },
          )
        const [loose, tight] = [judge(1), judge(t)]
        expect(OPPOSITE.has(`${loose.state} ${tight.state}`)).toBe(false)
        if (loose.state !== 'cannot-tell') expect(tight.state).not.toBe('cannot-tell')
        for (const { off, parts } of [loose, tight]) {
          expect(off?.plusMinus).toBeCloseTo(Math.hypot(...Object.values(parts)), 3)
        }
        expect(tight.off?.si).toBeCloseTo(loose.off?.si ?? Number.NaN, 6)
      }),
      { numRuns: 200 },
    )
  })

  it('its contents have one pressure, from dew to bubble as liquid is added', () => {
    fc.assert(
      fc.property(id, share, share, share, (name, along, one, other) => {
        const r = refrigerant(name)
        const { minimumTemperatureK: from, maximumTemperatureK: to } = r
        const kelvin = from + along * (to - from)
        const [thin, dense] = [r.dew.density(kelvin), r.bubble.density(kelvin)]
        const [less, more] = [one, other]
          .sort((a, b) => a - b)
          .map((s) => contentsAt(r, kelvin, thin + s * (dense - thin)))
        const slack = 1 + 2e-5
        expect(less?.pressurePa).toBeLessThanOrEqual((more?.pressurePa ?? 0) * slack)
        expect(less?.quality).toBeGreaterThanOrEqual((more?.quality ?? 1) - 1e-9)
        expect(more?.pressurePa).toBeLessThanOrEqual(r.bubble.pressure(kelvin) * slack)
        expect((less?.pressurePa ?? 0) * slack).toBeGreaterThanOrEqual(r.dew.pressure(kelvin))
      }),
      { numRuns: 200 },
    )
  })
})

it('names whichever part of the band is largest as what would settle it', () => {
  const even = { pressure: 1, temperature: 1, contents: 1, property: 1 }
  expect(mostOf(even)).toBe('pressure')
  for (const part of ['pressure', 'temperature', 'contents', 'property'] as const) {
    expect(mostOf({ ...even, [part]: 1.1 })).toBe(part)
    expect(mostOf({ pressure: 0, temperature: 0, contents: 0, property: 0, [part]: 1 })).toBe(part)
  }
  expect(widthOf({ pressure: 2, temperature: 3, contents: 6, property: 0 })).toBe(7)
})
