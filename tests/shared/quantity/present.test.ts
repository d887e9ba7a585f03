import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  gaugePressure,
  mass,
  pressureDifference,
  quantity,
  show,
  showAll,
  temperature,
  temperatureDifference,
} from '../../../shared/quantity/index.ts'

const us = { units: 'us', precise: false } as const
const si = { units: 'si', precise: false } as const
const both = { units: 'both', precise: false } as const

describe('a shown quantity', () => {
  it('is in the asked system, or in both', () => {
    expect(show(temperature(273.15), us)).toEqual({ value: 32, unit: '°F' })
    expect(show(temperature(273.15), si)).toEqual({ value: 0, unit: '°C' })
    expect(show(temperature(273.15), both)).toEqual({
      value: 32,
      unit: '°F',
      also: { value: 0, unit: '°C' },
    })
  })

  it('below the barometer is vacuum in US units', () => {
    expect(show(quantity('gaugePressure', 10, 'inHg vac'), us)).toEqual({
      value: 10,
      unit: 'inHg vac',
    })
  })

  it('takes the unit that its uncertainty is worth', () => {
    expect(show(quantity('pressureDifference', 300, 'micron'), us).unit).toBe('micron')
    expect(show(pressureDifference(40, 6_894.757), us)).toEqual({
      value: 0.006,
      unit: 'psi',
      plusMinus: 1,
    })
  })

  it('has the digits that its uncertainty supports, and never fewer than three figures', () => {
    const kelvin = (plusMinus: number) => show(temperatureDifference(5.123_456, plusMinus), si)
    expect(kelvin(0.12)).toEqual({ value: 5.12, unit: 'K', plusMinus: 0.12 })
    expect(kelvin(0.5)).toEqual({ value: 5.12, unit: 'K', plusMinus: 0.5 })
    expect(kelvin(3)).toEqual({ value: 5.12, unit: 'K', plusMinus: 3 })
    expect(show(gaugePressure(1e6, 5e4), si)).toEqual({ value: 1000, unit: 'kPa g', plusMinus: 50 })
  })

  it('never shows less uncertainty than there is but for half a digit, nor none where there is some', () => {
    const width = fc.double({ min: 1e-6, max: 1e4, noNaN: true })
    fc.assert(
      fc.property(width, (plusMinus) => {
        const shown = show(temperatureDifference(5, plusMinus), si).plusMinus ?? 0
        expect(shown).toBeGreaterThan(0)
        expect(shown).toBeGreaterThan(plusMinus * 0.94)
      }),
    )
  })

  it('has full precision when asked', () => {
    const precise = { units: 'si', precise: true } as const
    expect(show(mass(0.123_456_789_012), precise).value).toBe(123.456_789_012)
  })

  it('is never minus zero', () => {
    expect(Object.is(show(temperatureDifference(-1e-9), si).value, 0)).toBe(true)
  })
})

describe('a shown tree', () => {
  it('has every quantity shown, keeps the rest, and drops what is undefined', () => {
    const tree = { a: [temperature(273.15)], b: { c: 'x', d: undefined }, e: 3, f: null }
    expect(showAll(tree, si)).toEqual({
      a: [{ value: 0, unit: '°C' }],
      b: { c: 'x' },
      e: 3,
      f: null,
    })
  })
})
