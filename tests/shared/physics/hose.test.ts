import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  fillingDensity,
  holdUp,
  hoseVolume,
  uncertainHoldUp,
} from '../../../shared/physics/hose.ts'
import { density, refrigerant, saturatedDensity } from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const r = refrigerant('R-407C')
const hose = { boreM: 0.00635, lengthM: 1.8288 }
const K = 298.15
const [empty, vapour, liquid] = (['empty', 'vapour', 'liquid'] as const).map((holds) => ({
  holds,
})) as [{ holds: 'empty' }, { holds: 'vapour' }, { holds: 'liquid' }]

describe('what a hose holds', () => {
  it('is its volume times the density of what fills it', () => {
    expect(hoseVolume(hose)).toBeCloseTo((Math.PI * hose.boreM ** 2 * hose.lengthM) / 4, 12)
    expect(hoseVolume({ boreM: 1, lengthM: 1 })).toBeCloseTo(0.785398, 6)
    expect(fillingDensity(r, empty, K)).toBe(0)
    expect(fillingDensity(r, liquid, K)).toBe(saturatedDensity(r, K, 'liquid'))
    expect(fillingDensity(r, vapour, K)).toBe(saturatedDensity(r, K, 'vapour'))
    expect(fillingDensity(r, { holds: 'vapour', pressurePa: 3e5 }, K)).toBe(
      density(r, K, 3e5, 'vapour'),
    )
  })

  it('is what comes in less what was there: negative for a full hose emptied into the machine', () => {
    const full = holdUp(r, hose, K, empty, liquid)
    expect(full).toBeCloseTo(hoseVolume(hose) * saturatedDensity(r, K, 'liquid'), 12)
    expect(holdUp(r, hose, K, liquid, liquid)).toBe(0)
    expect(holdUp(r, hose, K, liquid, empty)).toBeCloseTo(-full, 12)
    const gas = holdUp(r, hose, K, empty, vapour)
    expect(holdUp(r, hose, K, vapour, liquid)).toBeCloseTo(full - gas, 12)
    expect(gas).toBeLessThan(full / 10)
  })

  it('refuses vapour at a pressure at which it is liquid', () => {
    expect(refusalOf(() => fillingDensity(r, { holds: 'vapour', pressurePa: 5e6 }, K)).code).toBe(
      'two-phase',
    )
  })

  it('carries the ± of bore, length and temperature, that of the bore twice', () => {
    const bore = { si: hose.boreM, plusMinus: 0.02 * hose.boreM }
    const length = { si: hose.lengthM, plusMinus: 0.01 * hose.lengthM }
    const of = (b: object, l: object, t: object) =>
      uncertainHoldUp(r, { ...bore, ...b }, { ...length, ...l }, { si: K, ...t }, empty, liquid)
    const sharp = { plusMinus: undefined }
    const mass = holdUp(r, hose, K, empty, liquid)
    expect(of(sharp, sharp, {}).si).toBeCloseTo(mass, 12)
    expect((of({}, sharp, {}).plusMinus ?? 0) / mass).toBeCloseTo(0.04, 6)
    expect((of(sharp, {}, {}).plusMinus ?? 0) / mass).toBeCloseTo(0.01, 6)
    const warm = holdUp(r, hose, K - 2, empty, liquid) - holdUp(r, hose, K + 2, empty, liquid)
    expect(of(sharp, sharp, { plusMinus: 2 }).plusMinus).toBeCloseTo(warm / 2, 12)
  })

  it('grows with the square of the bore and with the length', () => {
    const size = fc.double({ min: 0.001, max: 0.05, noNaN: true })
    fc.assert(
      fc.property(size, size, (boreM, lengthM) => {
        const once = holdUp(r, { boreM, lengthM }, K, empty, liquid)
        expect(holdUp(r, { boreM: 2 * boreM, lengthM }, K, empty, liquid) / once).toBeCloseTo(4, 9)
        expect(holdUp(r, { boreM, lengthM: 3 * lengthM }, K, empty, liquid) / once).toBeCloseTo(
          3,
          9,
        )
      }),
    )
  })
})
