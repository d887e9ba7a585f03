import { describe, expect, it } from 'vitest'
import { LONGEST_HEADLINE } from '../../../../shared/answer/told.ts'
import type { Cause } from '../../../../shared/diagnosis/hypotheses.ts'
import { TEXTS } from '../../../../shared/service/diagnose/verdict/texts.ts'
import { diagnoseTold } from '../../../../shared/service/diagnose/verdict/told.ts'
import type { Verdict } from '../../../../shared/service/diagnose/verdict/verdict.ts'

const CAUSES = Object.keys(TEXTS.causes) as Cause[]
const STEPS = Object.keys(TEXTS.steps)

/** Every cause alone, and every two, three and four of them, in the order of the table. */
function sets(most: number, from: readonly Cause[] = CAUSES): Cause[][] {
  if (most === 0) return [[]]
  return from.flatMap((cause, index) => [
    [cause],
    ...sets(most - 1, from.slice(index + 1))
      .filter((rest) => rest.length > 0)
      .map((rest) => [cause, ...rest]),
  ])
}

function headline(verdict: Verdict, id: string): string {
  const told = diagnoseTold({
    verdict,
    causes: [],
    steps: [{ id, minutes: 1, gain: 1, perMinute: 1 }],
    doubts: [],
    inVacuum: false,
    figures: [],
  })
  const { value } = told.figures[0] as { value: unknown }
  return told.headline.replace('{first}', String(value))
}

const VERDICTS: readonly Omit<Verdict, 'named' | 'share'>[] = [
  { id: 'cannot-tell', merged: false },
  { id: 'cannot-tell', merged: true },
  { id: 'fault', merged: true },
]

describe('the headline of a diagnosis', () => {
  it.each(VERDICTS)('is one line for $id, merged: $merged, whatever is named', (verdict) => {
    for (const named of sets(4)) {
      for (const id of STEPS) {
        const said = headline({ ...verdict, named, share: 0.95 }, id)
        expect(said.length, said).toBeLessThanOrEqual(LONGEST_HEADLINE)
      }
    }
  })

  it.each(CAUSES)('is one line for %s alone, by itself and beside a sound machine', (cause) => {
    for (const id of STEPS) {
      for (const verdict of [
        { id: 'fault', merged: false, named: [cause] },
        { id: 'cannot-tell', merged: false, soundFits: true, named: ['none', cause] },
      ] as const) {
        const said = headline({ ...verdict, share: 0.7 }, id)
        expect(said.length, said).toBeLessThanOrEqual(LONGEST_HEADLINE)
        expect(said.toLowerCase()).toContain(TEXTS.causes[cause].name)
      }
    }
  })

  it('names all three causes where there is room, and never drops the likeliest', () => {
    const three = headline(
      { id: 'cannot-tell', merged: false, named: ['overcharge', 'air', 'restriction'], share: 0.9 },
      'ventK',
    )
    for (const cause of ['overcharge', 'air', 'restriction'] as const)
      expect(three).toContain(TEXTS.causes[cause].name)
    const long = headline(
      {
        id: 'cannot-tell',
        merged: false,
        named: ['overcharge', 'condenser-air', 'reading-or-test-wrong'],
        share: 0.97,
      },
      'deviceInletK',
    )
    expect(long).toContain('overcharge')
    expect(long).toContain('condenser air flow or another')
  })
})
