import { describe, expect, it } from 'vitest'
import type { Cause } from '../../../../shared/diagnosis/hypotheses.ts'
import type { Inferred } from '../../../../shared/service/diagnose/posterior/infer.ts'
import { verdictOf } from '../../../../shared/service/diagnose/verdict/verdict.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'

/** What readings left of the suspicion: shares, the causes of the first class, how far they lie from the model. */
function left(
  shares: Readonly<Partial<Record<Cause, number>>>,
  together: readonly Cause[],
  misfit: number,
): Inferred {
  const causes = (Object.entries(shares) as [Cause, number][])
    .map(([cause, probability]) => ({ cause, probability, severity: 0.5 }))
    .sort((a, b) => b.probability - a.probability)
  const probability = together.reduce((sum, cause) => sum + (shares[cause] ?? 0), 0)
  return {
    all: [],
    posterior: { causes, weights: new Float64Array() },
    classes: [{ causes: together, probability }],
    priors: new Map(causes.map(({ cause }) => [cause, 1 / causes.length])),
    misfit,
  }
}

const GROUNDS = { knowledge: 'kind', read: 5 } as const
const LOW_CHARGE = { undercharge: 0.992, restriction: 0.004, 'evaporator-air': 0.002, air: 0.002 }

describe('readings beyond all that the model shows', () => {
  const ofPattern = ['undercharge', 'restriction', 'valve-stuck-closed', 'evaporator-air'] as const
  const named = (misfit: number, causes: readonly Cause[]) =>
    verdictOf(left(LOW_CHARGE, ['undercharge'], misfit), {
      ...GROUNDS,
      ofPattern: causes as typeof ofPattern,
    })

  it('name the first two of the pattern’s headline, as far as the machine can have them', () => {
    expect(named(1.4, ofPattern).named).toEqual(['undercharge'])
    expect(named(1.6, ofPattern)).toMatchObject({
      id: 'fault',
      named: ['undercharge', 'restriction'],
      merged: true,
    })
    expect(named(1.6, ofPattern).share).toBeCloseTo(0.996, 12)
    // an orifice has no valve to stick
    expect(named(1.6, ['undercharge', 'valve-stuck-closed']).named).toEqual(['undercharge'])
  })

  it('leave it open where model and pattern have nothing in common', () => {
    expect(named(1.6, ['air', 'evaporator-air'])).toMatchObject({
      id: 'cannot-tell',
      named: ['undercharge', 'air', 'evaporator-air'],
    })
    expect(named(1.6, []).named).toEqual(['undercharge'])
  })
})

describe('a kind of the model says what machine and device are', () => {
  const read = {
    refrigerant: 'R-134a',
    ambient: '92 °F',
    suctionPressure: '30 psig',
    suctionTemperature: '75 ±1 °F',
    dischargePressure: '200 psig',
    liquidTemperature: '110 °F',
  }
  it.each([
    [{ architecture: 'orifice-accumulator' }, ['tube-starved']],
    [{ architecture: 'valve-receiver' }, ['starved-not-low']],
    // what was said of it goes before
    [{ machine: 'off-road', meteringDevice: 'orifice-tube' }, ['tube-starved']],
    [{}, []],
  ])('%o', (known, patterns) => {
    const { result } = diagnose.run({ ...read, ...known })
    expect(result.patterns).toEqual(patterns)
  })

  it('and its law is not assumed with it', () => {
    const asked = { ...read, architecture: 'orifice-accumulator', law: 'eu' }
    const said = { ...asked, machine: 'off-road' }
    expect(diagnose.run(asked).law).not.toEqual(diagnose.run(said).law)
  })
})
