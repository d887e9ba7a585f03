import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { waterBoilingTemperature, waterVapourPressure } from '../../../shared/physics/water.ts'

describe('vapour pressure of water', () => {
  // IAPWS SR1-86(1992): triple point, and the table of computer-program check values.
  it.each([
    [273.16, 611.657, 5e-4],
    [373.1243, 0.101325e6, 0.5],
    [647.096, 22.064e6, 0.5],
  ])('agrees with the IAPWS release at %d K', (kelvin, pascal, tolerance) => {
    expect(Math.abs(waterVapourPressure(kelvin) - pascal)).toBeLessThan(tolerance)
  })

  // IAPWS R14-08(2011): check value of the sublimation equation.
  it('agrees with the IAPWS check value of ice at 230 K', () => {
    expect(waterVapourPressure(230)).toBeCloseTo(8.94735, 4)
  })

  // Independent calculation: CoolProp 8.0.0 (IAPWS-95). The auxiliary equation states ±0.025 % or better.
  it.each([
    [300, 3536.8067523441227],
    [500, 2639195.871761767],
    [640, 20265209.26802936],
  ])('agrees with the IAPWS-95 equation of state at %d K', (kelvin, pascal) => {
    expect(Math.abs(waterVapourPressure(kelvin) / pascal - 1)).toBeLessThan(2.5e-4)
  })

  it('joins ice and liquid at the triple point', () => {
    const below = waterVapourPressure(273.16 - 1e-9)
    expect(Math.abs(below / waterVapourPressure(273.16) - 1)).toBeLessThan(1e-6)
  })

  it('rises with temperature', () => {
    const kelvin = fc.double({ min: 100, max: 647, noNaN: true })
    fc.assert(
      fc.property(kelvin, kelvin, (one, other) => {
        if (Math.abs(one - other) < 1e-6) return
        const [cold, warm] = one < other ? [one, other] : [other, one]
        expect(waterVapourPressure(warm)).toBeGreaterThan(waterVapourPressure(cold))
      }),
    )
  })

  it('is undone by the boiling temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: 180, max: 640, noNaN: true }), (kelvin) => {
        const back = waterBoilingTemperature(waterVapourPressure(kelvin))
        expect(Math.abs(back - kelvin)).toBeLessThan(1e-6)
      }),
    )
  })

  it.each([Number.NaN, 20, 700])('refuses %d K', (kelvin) => {
    expect(() => waterVapourPressure(kelvin)).toThrow('no vapour pressure')
  })

  it.each([Number.NaN, 0, -5, 3e7])('refuses to boil water at %d Pa', (pascal) => {
    expect(() => waterBoilingTemperature(pascal)).toThrow()
  })
})

describe('the ends of the equations', () => {
  it('are answered, and refused a little beyond', () => {
    expect(waterVapourPressure(50)).toBeGreaterThan(0)
    expect(waterVapourPressure(647.096)).toBe(22.064e6)
    expect(() => waterVapourPressure(49.9)).toThrow()
    expect(() => waterVapourPressure(647.1)).toThrow()
    expect(waterBoilingTemperature(22.064e6)).toBeCloseTo(647.096, 6)
    expect(() => waterBoilingTemperature(22.1e6)).toThrow('22.064 MPa')
  })

  // Sublimation follows Clausius and Clapeyron: 2834 kJ/kg at the triple point (IAPWS R14-08 and R10-06).
  it('of ice have the slope of the heat of sublimation', () => {
    const slope = Math.log(waterVapourPressure(273.15) / waterVapourPressure(272.15))
    const heat = (slope * 272.65 ** 2 * 8.31446) / 0.018015268
    expect(Math.abs(heat / 2.8345e6 - 1)).toBeLessThan(2e-3)
  })
})
