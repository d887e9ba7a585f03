import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  contentsAt,
  density,
  refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../../shared/refrigerant/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const share = fc.double({ min: 0.02, max: 0.98, noNaN: true })

describe.each(['R-134a', 'R-290', 'R-407C', 'R-454B', 'R-410A'])('a closed space with %s', (id) => {
  const r = refrigerant(id)
  const isBlend = r.info.composition.length > 1

  it('holds what its mass and volume say: both balances close', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const t = 250 + 70 * a
        const [liquid, vapour] = [
          saturatedDensity(r, t, 'liquid'),
          saturatedDensity(r, t, 'vapour'),
        ]
        const whole = 1 / (b / vapour + (1 - b) / liquid)
        const found = contentsAt(r, t, whole)
        expect(found.holds).toBe('two-phase')
        expect(found.quality).toBeGreaterThan(0)
        expect(found.quality).toBeLessThan(1)
        const { pressurePa = Number.NaN, liquidShare, quality } = found
        const [low, high] = [saturationPressure(r, t, 'dew'), saturationPressure(r, t, 'bubble')]
        expect(pressurePa).toBeGreaterThanOrEqual(low * (1 - 1e-6))
        expect(pressurePa).toBeLessThanOrEqual(high * (1 + 1e-6))
        if (!isBlend) {
          expect(quality).toBeCloseTo(b, 9)
          expect(pressurePa).toBe(high)
          expect(liquidShare * liquid + (1 - liquidShare) * vapour).toBeCloseTo(whole, 6)
        } else {
          // Mass of the vapour by its own density in the room that it has.
          const gas = found.split?.vapour
          const gasMass = (1 - liquidShare) * (gas?.density ?? Number.NaN)
          const liquidMoles = liquidShare * (found.split?.liquid.density ?? Number.NaN)
          expect((gasMass + liquidMoles) * r.molarMass).toBeCloseTo(whole, 6)
          expect(gas?.pressurePa).toBe(pressurePa)
        }
      }),
      { numRuns: 30 },
    )
  })

  it('is vapour below its dew density and full of liquid above its bubble density', () => {
    const t = 290
    const thin = 0.5 * saturatedDensity(r, t, 'vapour')
    const gas = contentsAt(r, t, thin)
    expect(gas).toMatchObject({ holds: 'vapour', quality: 1, liquidShare: 0 })
    expect(density(r, t, gas.pressurePa ?? 0, 'vapour')).toBeCloseTo(thin, 6)
    expect(contentsAt(r, t, 1.001 * saturatedDensity(r, t, 'liquid'))).toEqual({
      holds: 'liquid-full',
      quality: 0,
      liquidShare: 1,
    })
    expect(contentsAt(r, t, saturatedDensity(r, t, 'liquid')).holds).toBe('liquid-full')
    expect(contentsAt(r, t, saturatedDensity(r, t, 'vapour')).holds).toBe('vapour')
  })

  it('is supercritical above its critical temperature, to the end of the equation', () => {
    const hot = r.criticalTemperatureK * 1.03
    const found = contentsAt(r, hot, 300)
    expect(found).toMatchObject({ holds: 'supercritical', quality: 1, liquidShare: 0 })
    expect(density(r, hot, found.pressurePa ?? 0, 'vapour')).toBeCloseTo(300, 3)
    expect(contentsAt(r, r.equationMaximumK, 100).holds).toBe('supercritical')
    expect(() => contentsAt(r, r.equationMaximumK + 0.01, 100)).toThrow()
    // A blend may still condense a little above its critical temperature: no guess is made there.
    const just = () => contentsAt(r, r.criticalTemperatureK * 1.01, 300)
    if (isBlend) expect(refusalOf(just).code).toBe('above-critical')
    else expect(just().holds).toBe('supercritical')
  })

  it('starts from a state near by with one solve, and ends where it would have', () => {
    const whole = 0.3 * saturatedDensity(r, 290, 'liquid')
    const work = { solves: 0 }
    const first = contentsAt(r, 290, whole, undefined, work)
    const before = work.solves
    const second = contentsAt(r, 291, whole, first, work)
    expect(second.pressurePa).toBeCloseTo(contentsAt(r, 291, whole).pressurePa ?? 0, 2)
    expect(work.solves - before).toBe(isBlend ? 1 : 0)
    expect(before).toBe(isBlend ? 3 : 0)
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('is refused with %d kg/m³', (whole) => {
    expect(refusalOf(() => contentsAt(r, 290, whole)).message).toContain('no volume')
  })

  it('is refused where the data end', () => {
    expect(() => contentsAt(r, r.minimumTemperatureK - 1, 300)).toThrow()
  })
})

it('refuses vapour or dense fluid beyond the pressure where its equation ends', () => {
  const r = refrigerant('R-134a')
  const hot = 1.05 * r.criticalTemperatureK
  const edge = density(r, hot, r.equationMaximumPa, 'vapour')
  expect(contentsAt(r, hot, 0.999 * edge).holds).toBe('supercritical')
  const refused = refusalOf(() => contentsAt(r, hot, 1.001 * edge))
  expect(refused.code).toBe('out-of-range')
  expect(refused.message).toContain('where its equation of state ends')
})
