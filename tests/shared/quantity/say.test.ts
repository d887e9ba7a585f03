import { describe, expect, it } from 'vitest'
import {
  gaugePressure,
  KINDS,
  type Kind,
  mass,
  parseQuantity,
  Quantity,
  quantity,
  readQuantity,
  say,
  show,
  systemOf,
  temperature,
  UNITS,
} from '../../../shared/quantity/index.ts'

describe('a quantity inside a sentence', () => {
  it('is in both unit systems, with its ± where it has one', () => {
    expect(say(mass(5.58))).toBe('12.3 lb (5.58 kg)')
    expect(say(quantity('gaugePressure', 210, 'psig', 4))).toBe('210 ±4 psig (1448 ±28 kPa g)')
    expect(say(quantity('fraction', 55, '%'))).toBe('55 %')
    expect(say(quantity('temperature', 52, '°F', 2))).toBe('52 ±2 °F (11.1 ±1.2 °C)')
  })

  it('has no more figures than a gauge or scale shows, but those that were typed', () => {
    expect(say(mass(0.907_185))).toBe('2 lb (907 g)')
    expect(say(quantity('absolutePressure', 4927.7, 'kPa abs'))).toBe('714.7 psia (4930 kPa abs)')
    expect(say(mass(0.907_185).in('g'))).toBe('907.2 g')
    expect(say(quantity('altitude', 60_000, 'ft'))).toBe('60000 ft (18288 m)')
    expect(say(quantity('temperature', 234.6, '°F'))).toBe('234.6 °F (112.6 °C)')
  })
})

describe('a quantity on a screen and in a result', () => {
  const reading = quantity('gaugePressure', 31.27, 'psig', 4)

  it('has on a screen the digits that its ± supports, in a result three figures at least', () => {
    expect(show(reading, { units: 'us', precise: false, onScreen: true })).toEqual({
      value: 31,
      unit: 'psig',
      plusMinus: 4,
    })
    expect(show(reading, { units: 'us', precise: false })).toEqual({
      value: 31.3,
      unit: 'psig',
      plusMinus: 4,
    })
  })

  it('keeps three figures of a small figure, but not of one that is nothing beside the usual digits', () => {
    const us = { units: 'us', precise: false } as const
    expect(show(quantity('absolutePressure', 0.459_8, 'psia'), us).value).toBe(0.46)
    expect(show(quantity('gaugePressure', 0.012_345, 'psig'), us).value).toBe(0.0123)
    expect(show(quantity('gaugePressure', 0.000_123_45, 'psig'), us).value).toBe(0.0001)
  })

  it('never adds figures to a temperature, whose zero is its own', () => {
    expect(show(temperature(273.151), { units: 'si', precise: false }).value).toBe(0)
  })

  it('has both in full where that is asked', () => {
    const precise = { units: 'si', precise: true } as const
    const found = show(mass(0.123_456_789, 0.000_123_456), precise)
    expect(found).toEqual({ value: 123.456_789, unit: 'g', plusMinus: 0.123_456 })
    expect(show(mass(0.123_456_789), precise)).toEqual({ value: 123.456_789, unit: 'g' })
  })

  it('comes first in the system that leads', () => {
    const both = { units: 'both', precise: false } as const
    expect(show(mass(1), { ...both, lead: 'si' })).toEqual({
      value: 1000,
      unit: 'g',
      also: { value: 2.205, unit: 'lb' },
    })
    expect(show(mass(1), both).unit).toBe('lb')
  })

  it('shows no ± of less than there is, and one of zero as zero', () => {
    const us = { units: 'us', precise: false, onScreen: true } as const
    const band = (psi: number) => show(quantity('gaugePressure', 100, 'psig', psi), us).plusMinus
    expect(band(0)).toBe(0)
    expect(band(4.4)).toBe(5)
    expect(band(4.04)).toBe(4)
    expect(band(2.99)).toBe(3)
    expect(band(2.42)).toBe(2.5)
    expect(band(12)).toBe(12)
    expect(band(31)).toBe(31)
    expect(band(0.31)).toBe(0.4)
  })

  it('is refused where the unit makes it overflow', () => {
    const huge = new Quantity('mass', 1e308)
    expect(() => show(huge, { units: 'si', precise: true })).not.toThrow()
    expect(() => show(new Quantity('length', 1e308), { units: 'us', precise: true })).toThrow(
      /too large to be a number/u,
    )
  })

  it('in a unit asked for by name has five figures, or the usual ones where the unit is usual', () => {
    const us = { units: 'us', precise: false } as const
    expect(show(mass(1.234_567).in('mg'), us)).toEqual({ value: 1_234_567, unit: 'mg' })
    expect(show(quantity('length', 1.234_567, 'yd').in('yd'), us)).toEqual({
      value: 1.2346,
      unit: 'yd',
    })
    expect(show(quantity('length', 0, 'yd').in('yd'), us)).toEqual({ value: 0, unit: 'yd' })
    expect(show(mass(0.5).in('oz'), us)).toEqual({ value: 17.64, unit: 'oz' })
    expect(show(quantity('gaugePressure', 2.2, 'bar g').in('bar g'), us)).toEqual({
      value: 2.2,
      unit: 'bar g',
    })
    expect(show(temperature(300.123).in('K'), us)).toEqual({ value: 300.12, unit: 'K' })
  })
})

describe('figures of one range', () => {
  it('keep their size through a change of unit and of ±', () => {
    const sized = quantity('mass', 1, 'oz').sized(20)
    const us = { units: 'us', precise: false } as const
    expect(show(sized.within(0.001), us).unit).toBe('lb')
    expect(sized.in('oz').sizedAs).toBe(20)
    expect(gaugePressure(5).sized(7).si).toBe(5)
  })
})

describe('the unit system that somebody writes in', () => {
  it.each<[text: string, kind: Kind, system: 'us' | 'si' | undefined]>([
    ['52 °F', 'temperature', 'us'],
    ['11 °C', 'temperature', 'si'],
    ['284 K', 'temperature', 'si'],
    ['32 psig', 'gaugePressure', 'us'],
    ['47 psia', 'absolutePressure', 'us'],
    ['10 inHg vac', 'gaugePressure', 'us'],
    ['2.2 bar g', 'gaugePressure', 'si'],
    ['500 micron', 'absolutePressure', undefined],
    ['2 Torr', 'absolutePressure', undefined],
    ['1 atm', 'pressureDifference', undefined],
    ['2 atm abs', 'absolutePressure', undefined],
    ['2 lb 6 oz', 'mass', 'us'],
    ['28 oz', 'mass', 'us'],
    ['340 g', 'mass', 'si'],
    ['8 fl oz', 'volume', 'us'],
    ['1 gal', 'volume', 'us'],
    ['240 mL', 'volume', 'si'],
    ['3/8 in', 'length', 'us'],
    ['2 m', 'length', 'si'],
    ['10 min', 'duration', undefined],
    ['2 h', 'duration', undefined],
    ['55 %', 'fraction', undefined],
    ['200 ppm', 'fraction', undefined],
    ['0.6 oz/ft', 'massPerLength', 'us'],
    ['5 g/ft', 'massPerLength', undefined],
    ['6 cfm', 'volumeFlow', 'us'],
    ['75 lb/ft3', 'density', 'us'],
    ['86 Btu/lb', 'specificEnergy', 'us'],
    ['14 g/yr', 'massFlow', 'si'],
  ])('of %s', (text, kind, system) => {
    expect(systemOf(parseQuantity(text, [kind]))).toBe(system)
    const { value, unit } = show(parseQuantity(text, [kind]).in(UNITS[kind][0]?.symbol), {
      units: 'us',
      precise: true,
    })
    // A pair says it as the text does.
    const pair = readQuantity({ value, unit }, [kind])
    expect(pair.written).toBe(unit)
  })

  it('is unknown of a figure that nobody wrote', () => {
    expect(systemOf(mass(1))).toBeUndefined()
  })
})

describe('a quantity made from a number in a unit', () => {
  it.each(KINDS)('%s has its ± in SI too, whichever way the unit counts', (kind) => {
    for (const { symbol, factor, offset } of UNITS[kind]) {
      const made = quantity(kind, 2, symbol, 3)
      expect(made.si).toBe(2 * factor + offset)
      expect(made.plusMinus).toBe(3 * Math.abs(factor))
      expect(made.to(symbol)).toBeCloseTo(2, 9)
      expect(quantity(kind, 2, symbol).plusMinus).toBeUndefined()
    }
  })

  it('is refused in a unit of another kind, and where it is no number', () => {
    expect(() => quantity('mass', 1, 'psig')).toThrow(
      expect.objectContaining({ code: 'wrong-kind' }),
    )
    expect(() => mass(Number.NaN)).toThrow(expect.objectContaining({ code: 'out-of-range' }))
    expect(() => mass(1, Number.POSITIVE_INFINITY)).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    )
  })
})
