import { CalcError } from '../../errors.ts'
import type { Assumption, Warning } from '../../operation.ts'
import { type Budget, budget, say, temperature } from '../../quantity/index.ts'
import type { ReadingsInput } from './fields.ts'
import type { Judgement } from './judge.ts'
import type { Measured } from './measured.ts'
import { readingSource } from './sources.ts'
import {
  COLDEST_TEST_K,
  COLDEST_TEST_SOURCE,
  LEAST_SUPERHEAT_K,
  TARGET_TOLERANCE_K,
  TOLERANCE_SOURCES,
  targetSuperheat,
} from './target-superheat.ts'
import { compared, type Meanings, notJudged, type Verdict } from './verdict.ts'

const MEANINGS: Meanings = {
  inside: 'The charge fits its target, as far as the air flow over the evaporator is right.',
  below:
    'Too much refrigerant, or too little air over the evaporator: check the air flow first; then recover some, wait 15 minutes, and read again.',
  above:
    'Too little refrigerant, or a restriction: subcooling tells them apart. With a low charge add some, wait 15 minutes, and read again.',
}

/** Charge of a stationary machine with a fixed orifice, by its superheat. */
export function orificeVerdict(m: Measured, measured: Budget, input: ReadingsInput): Judgement {
  const { superheatTarget, superheatLow, superheatHigh } = input
  const frame = { about: 'charge', figure: 'superheat', measured, meanings: MEANINGS } as const
  if (superheatLow && superheatHigh) {
    return plain(
      compared({
        ...frame,
        method: 'range-of-maker',
        lowK: superheatLow.si,
        highK: superheatHigh.si,
        sources: [],
      }),
    )
  }
  if (superheatTarget) {
    const { si, plusMinus } = superheatTarget
    return plain(
      compared({
        ...frame,
        method: 'target-superheat-of-maker',
        ...around(si),
        targetK: { si, plusMinus, parts: [] },
        sources: TOLERANCE_SOURCES,
      }),
    )
  }
  const outdoor = m.outdoorDryBulb ?? m.ambient
  if (!outdoor || !m.indoorWetBulb) {
    return plain(
      notJudged(
        'charge',
        'superheat',
        `No verdict: the target superheat takes ${[
          m.indoorWetBulb ? '' : 'the indoor wet bulb',
          outdoor ? '' : 'the outdoor dry bulb',
        ]
          .filter((part) => part !== '')
          .join(' and ')}.`,
      ),
    )
  }
  return byWeather(frame, outdoor, m.indoorWetBulb, m.outdoorDryBulb === undefined)
}

type Frame = {
  readonly about: 'charge'
  readonly figure: 'superheat'
  readonly measured: Budget
  readonly meanings: Meanings
}
type Air = NonNullable<Measured['ambient']>

function byWeather(frame: Frame, outdoor: Air, wetBulb: Air, stoodIn: boolean): Judgement {
  const assumptions: readonly Assumption[] = stoodIn
    ? [
        {
          field: 'outdoorDryBulb',
          taken: say(outdoor),
          because: 'the ambient given is the air entering the condenser',
        },
      ]
    : []
  try {
    const { method, sources } = targetSuperheat(outdoor.si, wetBulb.si)
    const targetK = budget(
      [
        { name: 'outdoor dry bulb', si: outdoor.si, plusMinus: outdoor.plusMinus },
        { name: 'indoor wet bulb', si: wetBulb.si, plusMinus: wetBulb.plusMinus },
      ],
      (outdoorK, wetBulbK) => targetSuperheat(outdoorK, wetBulbK).targetK,
    )
    const cold = outdoor.si < COLDEST_TEST_K
    return {
      verdicts: [
        compared({
          ...frame,
          method: method === 'formula' ? 'target-superheat-formula' : 'target-superheat-table',
          // The makers' own floor: a superheat under 5 °F floods, whatever the target.
          lowK: Math.max(targetK.si - TARGET_TOLERANCE_K, LEAST_SUPERHEAT_K),
          highK: targetK.si + TARGET_TOLERANCE_K,
          targetK,
          sources: [
            ...sources,
            ...TOLERANCE_SOURCES,
            readingSource('rossi-braun'),
            ...(cold ? [COLDEST_TEST_SOURCE] : []),
          ],
        }),
      ],
      assumptions,
      warnings: [...(method === 'formula' ? [FORMULA] : []), ...(cold ? [tooCold(outdoor)] : [])],
    }
  } catch (error) {
    if (!(error instanceof CalcError) || error.code !== 'refused') throw error
    const refused = notJudged(
      'charge',
      'superheat',
      `${error.message} ${error.hint}`,
      'no-valid-test',
      TOLERANCE_SOURCES,
    )
    return { verdicts: [{ ...refused, measured: frame.measured }], assumptions, warnings: [] }
  }
}

const around = (targetK: number) => ({
  lowK: targetK - TARGET_TOLERANCE_K,
  highK: targetK + TARGET_TOLERANCE_K,
})

const plain = (verdict: Verdict): Judgement => ({
  verdicts: [verdict],
  assumptions: [],
  warnings: [],
})

const FORMULA: Warning = {
  code: 'target-by-formula',
  message:
    'The weather is outside the published table of target superheat. The target is the common formula, which has no primary source; the maker’s chart goes before it.',
}

const tooCold = (outdoor: Air): Warning => ({
  code: 'too-cold-for-charge-test',
  message: `At ${say(temperature(outdoor.si))} outdoors a published test method does not allow the test (from ${say(temperature(COLDEST_TEST_K))} up); targets below that are one maker's own, or the formula's. Weigh the charge.`,
})
