import { CalcError } from '../../errors.ts'
import type { Warning } from '../../operation.ts'
import { budget, type Quantity, say, temperature } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { ReadingsInput } from './fields.ts'
import type { Measured } from './measured.ts'
import type { Difference } from './shown.ts'
import { readingSource } from './sources.ts'
import {
  COLDEST_TEST_K,
  COLDEST_TEST_SOURCE,
  LEAST_SUPERHEAT_K,
  TARGET_TOLERANCE_K,
  TOLERANCE_SOURCES,
  targetSuperheat,
} from './target-superheat.ts'
import { TEXTS } from './texts.ts'
import { compared, type Judgement, notJudged, type Verdict } from './verdict.ts'

/** Charge of a stationary machine with a fixed orifice, by its superheat. */
export function orificeVerdict(m: Measured, measured: Difference, input: ReadingsInput): Judgement {
  const { superheatTarget, superheatLow, superheatHigh } = input
  const frame = {
    about: 'charge',
    figure: 'superheat',
    measured,
    refrigerant: m.refrigerant.info.id,
    meanings: 'superheat-orifice',
  } as const
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
  const { ambient, returnWetBulb } = m
  if (!ambient || !returnWetBulb) {
    const missing = [
      ...(returnWetBulb ? [] : [TEXTS.notJudged['wet-bulb']]),
      ...(ambient ? [] : [TEXTS.notJudged['outdoor-air']]),
    ].join(' and ')
    const meaning = fillIn(TEXTS.notJudged['air-missing'], { missing })
    return plain(notJudged('charge', 'superheat', meaning, 'wet-bulb'))
  }
  return byWeather(frame, ambient, returnWetBulb)
}

type Frame = Omit<Parameters<typeof compared>[0], 'method' | 'lowK' | 'highK' | 'sources'>
type Air = Quantity<'temperature'>

function byWeather(frame: Frame, outdoor: Air, wetBulb: Air): Judgement {
  try {
    const { method, sources } = targetSuperheat(outdoor.si, wetBulb.si)
    const targetK = budget(
      [
        { name: 'outdoor air', si: outdoor.si, plusMinus: outdoor.plusMinus },
        { name: 'wet bulb of the return air', si: wetBulb.si, plusMinus: wetBulb.plusMinus },
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
      assumptions: [],
      warnings: [...(method === 'formula' ? [FORMULA] : []), ...(cold ? [tooCold(outdoor)] : [])],
    }
  } catch (error) {
    if (!(error instanceof CalcError) || error.code !== 'refused') throw error
    return plain(
      notJudged('charge', 'superheat', `${error.message} ${error.hint}`, 'weather', {
        outcome: 'no-valid-test',
        measured: frame.measured,
        sources: TOLERANCE_SOURCES,
      }),
    )
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
  message: TEXTS.warnings['target-by-formula'],
}

const tooCold = (outdoor: Air): Warning => ({
  code: 'too-cold-for-charge-test',
  message: fillIn(TEXTS.warnings['too-cold'], {
    air: say(temperature(outdoor.si)),
    coldest: say(temperature(COLDEST_TEST_K)),
  }),
})
