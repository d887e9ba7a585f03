import { describe, expect, it } from 'vitest'
import { leakTest } from '../../shared/service/leak-test.ts'

const expectedAt = (start: string, from: string, to: string, units: 'us' | 'si') =>
  leakTest.run({
    startPressure: start,
    endPressure: start,
    startTemperature: from,
    endTemperature: to,
    units,
    precise: true,
  }).result.standing?.byTemperature

describe('standing nitrogen and temperature', () => {
  // ACHR News 153295: absolute gas law. 150 psig at 80 °F becomes 146.9 psig at 70 °F (printed to 0.1 psi).
  it('takes 150 psig at 80 °F to 146.9 psig at 70 °F', () => {
    expect(150 + (expectedAt('150 psig', '80 °F', '70 °F', 'us')?.value ?? 0)).toBeCloseTo(146.9, 1)
  })

  // LG Multi V manual, page 33: 0.07 MPa for 7 °C at 3.8 MPa, by a fixed 0.01 MPa per °C. The gas law gives 0.091 MPa.
  it('shows that a fixed figure per degree falls short at 3.8 MPa', () => {
    const change = expectedAt('3.8 MPa g', '27 °C', '20 °C', 'si')
    expect(change?.unit).toBe('kPa')
    expect(-(change?.value ?? 0)).toBeCloseTo(91, 0)
    expect(-(change?.value ?? 0)).toBeGreaterThan(70 * 1.2)
  })
})

describe('sensitivity of a soap film', () => {
  // ASTM E515 prints the limit twice, as 4.5e-10 mol/s and as 1e-5 standard cm³/s (0 °C, 1 atm).
  // The second form, as a year of the gas by its molar mass; two digits are printed.
  it.each([
    ['R-134a', 102.03],
    ['R-22', 86.47],
    ['R-744', 44.01],
  ])('is that flow of %s as a mass', (refrigerant, gramsPerMole) => {
    const { searching } = leakTest.run({
      refrigerant,
      method: 'soap-film',
      units: 'si',
      precise: true,
    }).result
    const smallest = searching?.methods[0]?.smallest
    const molesPerSecond = (1e-5 * 1e-6 * 101_325) / (8.314462618 * 273.15)
    expect(smallest?.unit).toBe('g/yr')
    const gramsPerYear = molesPerSecond * gramsPerMole * 365.25 * 86_400
    expect(Math.abs((smallest?.value ?? Number.NaN) / gramsPerYear - 1)).toBeLessThan(0.011)
  })
})
