import { describe, expect, it } from 'vitest'
import { massOfLeak, refrigerantLoss } from '../../../shared/physics/leak-rate.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'

const ATM = 101_325
const r = refrigerant('R-134a')
const K = 298.15

describe('a leak as a mass', () => {
  it('is pV flow by the ideal gas law', () => {
    expect(massOfLeak(1, 0.028, 300)).toBeCloseTo(0.028 / (8.31446 * 300), 10)
    expect(massOfLeak(2, 0.028, 600)).toBeCloseTo(massOfLeak(1, 0.028, 300), 12)
  })
})

describe('refrigerant through the hole that air came in by', () => {
  const air = 0.0289644
  const band = (restHighPa: number, measuredLowPa = 0) =>
    refrigerantLoss(
      1e-4,
      { measuredMolarMass: air, measuredHighPa: ATM, measuredLowPa, restHighPa, restLowPa: ATM },
      r,
      K,
    )
  const mass = (share: number) => massOfLeak(1e-4 * share, r.molarMass, K)

  it('is between what passes molecule by molecule and what flows, 1.2 to 2.5 times thinner', () => {
    // 6 atm against 1: difference 5, squares 35
    const molecular = mass(5 * Math.sqrt(air / r.molarMass))
    const { fromKgPerS, toKgPerS } = band(6 * ATM)
    expect(fromKgPerS).toBeCloseTo(molecular, 12)
    expect(toKgPerS).toBeCloseTo(mass(35 * 2.5), 12)
  })

  it('counts the gas that stood on the other side while it was measured', () => {
    expect(band(6 * ATM, ATM / 2).toKgPerS).toBeCloseTo(mass((35 / 0.75) * 2.5), 12)
    expect(band(6 * ATM, ATM / 2).fromKgPerS).toBeCloseTo(
      mass((5 / 0.5) * Math.sqrt(air / r.molarMass)),
      12,
    )
  })

  it('takes the flow without its spread for the lower end where that is less', () => {
    // little over the barometer: squares 0.0201, difference 0.01
    const { fromKgPerS, toKgPerS } = band(1.01 * ATM)
    expect(fromKgPerS).toBeCloseTo(mass(0.01 * Math.sqrt(air / r.molarMass)), 12)
    expect(toKgPerS).toBeCloseTo(mass(0.0201 * 2.5), 12)
    const heavy = refrigerantLoss(
      1e-4,
      {
        measuredMolarMass: 0.2,
        measuredHighPa: 2 * ATM,
        measuredLowPa: ATM,
        restHighPa: 2 * ATM,
        restLowPa: ATM,
      },
      r,
      K,
    )
    expect(heavy.fromKgPerS).toBeCloseTo(mass(1.2), 12)
  })

  it('is nothing where the refrigerant stands below the barometer', () => {
    expect(band(0.8 * ATM)).toEqual({ fromKgPerS: 0, toKgPerS: 0 })
  })
})
