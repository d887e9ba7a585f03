import { describe, expect, it } from 'vitest'
import { USUAL_PRIORS } from '../../../../shared/diagnosis/posterior.ts'
import { pickRefrigerant } from '../../../../shared/fields/index.ts'
import { resolvePlace } from '../../../../shared/instrument/index.ts'
import { newNotes } from '../../../../shared/notes.ts'
import { kindsOf } from '../../../../shared/service/diagnose/input/kinds.ts'
import { takenIn } from '../../../../shared/service/diagnose/observations/taken.ts'
import { candidatesOf } from '../../../../shared/service/diagnose/posterior/candidates.ts'
import { infer } from '../../../../shared/service/diagnose/posterior/infer.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'

const given = diagnose.parse({ refrigerant: 'R-134a', architecture: 'valve-receiver' })
const r134a = pickRefrigerant(given.refrigerant)
const kinds = kindsOf(given, r134a)
const { weather } = takenIn(given, given, resolvePlace(given), newNotes())
const candidates = candidatesOf(kinds, weather, 'liquid-line', undefined, 'carried')
const weighedBy = (priors: typeof USUAL_PRIORS | undefined) =>
  infer(candidates, [], {
    ...{ sizes: weather.sizes, doubts: ['anything'], priors },
    evidence: { patterns: [], rest: undefined, ruledOut: [] },
  })

describe('how likely each cause is before anything was read', () => {
  it('is the same for all where nothing is known, and adds up to one after weighing', () => {
    const found = weighedBy(undefined)
    const shares = [...(found?.priors.values() ?? [])]
    expect(shares.length).toBeGreaterThan(8)
    const [first = Number.NaN] = shares
    expect(first).toBeGreaterThan(0)
    for (const share of shares) expect(share / first).toBeCloseTo(1, 9)
  })

  it('is what it usually is, in proportion, and what the readings leave where there are none', () => {
    const found = weighedBy(USUAL_PRIORS)
    const sum = [...(found?.priors.values() ?? [])].reduce((total, share) => total + share, 0)
    const usual = [...(found?.priors.keys() ?? [])].reduce(
      (total, cause) => total + (USUAL_PRIORS[cause] ?? 0),
      0,
    )
    for (const { cause, probability } of found?.posterior.causes ?? []) {
      const share = (found?.priors.get(cause) ?? Number.NaN) / sum
      expect(share, cause).toBeCloseTo((USUAL_PRIORS[cause] ?? 0) / usual, 9)
      expect(probability, cause).toBeCloseTo(share, 9)
    }
  })
})
