import { describe, expect, it } from 'vitest'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { mixed } from '../../../shared/service/contamination/mixed.ts'
import { sharesThatFit } from '../../../shared/service/contamination/shares.ts'
import { contamination } from '../../../shared/service/contamination.ts'
import { workOut } from '../../../shared/service/fractionation/work-out.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('a mixture that is searched for a pressure', () => {
  const [expected, other] = [refrigerant('R-404A'), refrigerant('R-407C')]

  it('solves each share once, however often it is asked for', () => {
    const mixture = mixed(expected, other, 300)
    const once = mixture.pressure(0.3)
    expect([mixture.pressure(0.3), mixture.pressure(0.3)]).toEqual([once, once])
    expect(mixture.solves).toBe(1)
    mixture.pressure(0.31)
    expect(mixture.solves).toBe(2)
  })

  it('has the same pressure wherever the search came from', () => {
    const alone = mixed(expected, other, 300).pressure(0.37)
    const mixture = mixed(expected, other, 300)
    for (const share of [0.98, 0.2, 0.5, 0.35]) mixture.pressure(share)
    expect(mixture.pressure(0.37)).toBeCloseTo(alone, 3)
  })

  it('takes a few dozen solves for all its shares, edges of the bands included', () => {
    const mixture = mixed(expected, other, 300)
    const found = sharesThatFit(mixture.pressure, 1.3e6, () => 2e4)
    expect(found.length).toBeGreaterThan(0)
    expect(mixture.solves).toBeLessThanOrEqual(55)
  })

  it('is tried with a dozen suspects at most', () => {
    const suspects = Array.from({ length: 13 }, () => 'R-22')
    const refusal = refusalOf(() => contamination.run({ ...contamination.example, suspects }))
    expect([refusal.code, refusal.path]).toEqual(['bad-input', ['suspects']])
  })
})

describe('a leak at another share lost', () => {
  const { info } = refrigerant('R-407C')

  it.each(['vapour', 'liquid'] as const)('of %s goes on from where it was', (escapes) => {
    const leak = workOut(info, 298, 0.8, escapes, 0.4)
    for (const share of [0.39, 0.4, 0.43]) {
      const anew = workOut(info, 298, 0.8, escapes, share)
      expect(leak.shiftAtK(share)).toBeCloseTo(anew.shiftK, 4)
    }
  })

  it('goes on behind the last drop of liquid too', () => {
    const leak = workOut(info, 298, 0.02, 'vapour', 0.8)
    expect(leak.states.at(-1)?.split).toBeUndefined()
    expect(leak.shiftAtK(0.82)).toBeCloseTo(workOut(info, 298, 0.02, 'vapour', 0.82).shiftK, 3)
  })
})
