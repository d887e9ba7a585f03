import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import {
  quantity,
  SEA_LEVEL_PA,
  standardAtmosphere,
  toAbsolute,
  toGauge,
} from '../../../shared/quantity/index.ts'

describe('standard atmosphere', () => {
  // US Standard Atmosphere 1976, table I (geopotential altitude, pressure in mb): from memory, not
  // read. The equation itself (33a) is the proof, half a unit of the last digit.
  it.each([
    [0, 1013.25],
    [1_000, 898.75],
    [2_000, 794.95],
    [3_000, 701.08],
    [5_000, 540.2],
    [10_000, 264.36],
    [11_000, 226.32],
  ])('at %d m of geopotential height is %d hPa, as remembered', (altitudeM, hPa) => {
    expect(Math.abs(standardAtmosphere(altitudeM) / 100 - hPa)).toBeLessThanOrEqual(0.0055)
  })

  it('falls with height', () => {
    const height = fc.double({ min: -1_000, max: 10_990, noNaN: true })
    fc.assert(
      fc.property(height, (altitudeM) => {
        expect(standardAtmosphere(altitudeM + 10)).toBeLessThan(standardAtmosphere(altitudeM))
      }),
    )
  })

  it.each([-1_001, 11_001, Number.NaN, Number.POSITIVE_INFINITY])('is refused at %d m', (m) => {
    expect(() => standardAtmosphere(m)).toThrow(CalcError)
  })
})

describe('gauge and absolute', () => {
  it('undo each other under any barometer', () => {
    const barometer = fc.double({ min: 30_000, max: 110_000, noNaN: true })
    const pressure = fc.double({ min: 1, max: 5e6, noNaN: true })
    fc.assert(
      fc.property(barometer, pressure, (barometerPa, pressurePa) => {
        const gauge = toGauge(pressurePa, barometerPa)
        expect(Math.abs(toAbsolute(gauge, barometerPa).si - pressurePa)).toBeLessThan(1e-8 * 5e6)
      }),
    )
  })

  it('a gauge at a perfect vacuum, or below, is refused with the reading it could have', () => {
    const reading = quantity('gaugePressure', 30, 'inHg vac')
    expect(() => toAbsolute(reading, SEA_LEVEL_PA)).toThrow(/29\.92 inHg vac/u)
  })
})
