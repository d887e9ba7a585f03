import { describe, expect, it } from 'vitest'
import { FAULT_KINDS, type FaultKind, preset } from '../../../shared/cycle/index.ts'
import { effectsOf } from '../../../shared/diagnosis/effects.ts'
import { FEATURES } from '../../../shared/diagnosis/features.ts'
import { finer } from '../../../shared/diagnosis/finer.ts'
import { inferInTurn, worthSolving } from '../../../shared/service/diagnose/posterior/infer.ts'

describe('what is solved in the weather of a test', () => {
  it('is at most eight causes, the likeliest, however many are likely', () => {
    const total = (FAULT_KINDS.length * (FAULT_KINDS.length + 1)) / 2
    const ranked = FAULT_KINDS.map((cause, i) => ({
      cause,
      probability: (i + 1) / total,
      severity: 0.5,
    }))
    expect(worthSolving(ranked)).toEqual([...FAULT_KINDS].reverse().slice(0, 8))
  })

  it('is one that is likely, with those that act as it does, and never what is no fault', () => {
    const ranked = [
      { cause: 'none' as const, probability: 0.6, severity: 0 },
      { cause: 'reading-or-test-wrong' as const, probability: 0.2, severity: 0 },
      { cause: 'condenser-air' as const, probability: 0.2, severity: 0.5 },
      { cause: 'air' as const, probability: 2e-5, severity: 0.5 },
      { cause: 'overcharge' as const, probability: 1e-5, severity: 0.5 },
      { cause: 'restriction' as const, probability: 4e-4, severity: 0.5 },
    ]
    expect(worthSolving(ranked)).toEqual(['condenser-air', 'air', 'overcharge'])
  })

  it('keeps what acts as the likeliest does before what is a little likelier and acts otherwise', () => {
    const ranked = [
      { cause: 'restriction' as const, probability: 0.9, severity: 0.5 },
      ...(
        [
          'undercharge',
          'overcharge',
          'condenser-air',
          'evaporator-air',
          'valve-stuck-closed',
          'compressor-leak',
          'air',
          'stroke-stuck-low',
        ] as const
      ).map((cause) => ({ cause, probability: 0.01, severity: 0.5 })),
      { cause: 'valve-stuck-open' as const, probability: 1e-6, severity: 0.5 },
    ]
    expect(worthSolving(ranked)).toContain('valve-stuck-open')
    expect(worthSolving(ranked)).toHaveLength(8)
  })
})

describe('the faults whose spread is taken where they stand', () => {
  const { machine, nominal } = preset('van-valve-134a')
  const effects = finer(
    effectsOf(machine, nominal, () => [0.2, 0.4, 0.6, 0.8]),
    2,
  )

  it.each([0.1, 0.3, 0.7])('are the likely ones, at the severity that fits best: %s', (about) => {
    const truth = effects
      .filter(({ cause }) => cause === 'condenser-air')
      .reduce((a, b) => (Math.abs(b.severity - about) < Math.abs(a.severity - about) ? b : a))
    const asked: ReadonlyMap<FaultKind, number>[] = []
    inferInTurn(
      {
        candidates: () => [{ share: 1, effects, knowledge: 'model' }],
        spread: (candidates, severities) => {
          asked.push(severities)
          return candidates
        },
      },
      false,
      FEATURES.filter((feature) => feature !== 'chargeShare').map((feature) => ({
        feature,
        value: truth.mean[FEATURES.indexOf(feature)] as number,
        sigma: feature.endsWith('Pa') ? 3_000 : 0.3,
      })),
      {
        sizes: { speed: 0.01, returnHumidity: 0.01, returnAirK: 0.2, ambientK: 0.2 },
        doubts: ['anything'],
        priors: undefined,
        evidence: { patterns: [], rest: undefined, ruledOut: [] },
      },
    )
    expect(asked).toHaveLength(1)
    expect(asked[0]?.get('condenser-air')).toBeCloseTo(truth.severity, 12)
    expect(asked[0]?.has('undercharge')).toBe(false)
  })
})
