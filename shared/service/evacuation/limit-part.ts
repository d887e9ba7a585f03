import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  duration,
  pressureDifference,
  quantityOut,
  say,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { EvacuationInput } from './fields.ts'
import { HOLD_LIMITS, holdLimit, judgeLimit, permitted } from './hold-limit.ts'
import type { RisePoint } from './rise-shape.ts'
import type { RiseJudgement } from './rise-view.ts'
import { sentences } from './sentences.ts'
import { vacuumText } from './vacuum-text.ts'

const LIMIT_VERDICTS = ['kept', 'broken', 'cannot-tell', 'too-short-to-tell'] as const

export const limitOut = z
  .strictObject({
    id: z.string().describe('Name of the rule'),
    rule: z.string().describe('What it asks'),
    verdict: z.enum(LIMIT_VERDICTS),
    rise: quantityOut.describe('Rise in the time of the rule'),
    atEnd: quantityOut.describe('Pressure at its end'),
  })
  .describe('The chosen published rule')

type LimitResult = Computed<z.output<typeof limitOut>>

/** The readings against a chosen published rule; undefined when none was chosen. */
export function limitPart(
  { limit: id, temperature }: EvacuationInput,
  points: readonly RisePoint[],
  judged: RiseJudgement,
  levelPlusMinusPa: number,
  notes: Notes,
): LimitResult | undefined {
  if (id === undefined) return undefined
  const limit = holdLimit(id)
  if (!limit) {
    throw new CalcError('unknown-name', `There is no hold limit "${id}".`, {
      path: ['limit'],
      hint: `There are: ${HOLD_LIMITS.join(', ')}.`,
    })
  }
  notes.sources.push(limit.source)
  if (limit.atSeaLevel) {
    notes.assumptions.push({
      field: 'limit',
      taken: 'its gauge figure as one at sea level',
      because: 'manuals print gauge readings for sea level unless they say otherwise',
    })
  }
  const scatterPa = judged.fits.scatter * judged.fits.expectedSigmaPa
  const found = judgeLimit(limit, points, scatterPa, levelPlusMinusPa)
  const most = permitted(limit, points[0]?.pressurePa ?? 1)
  if (temperature && most.si > judged.vapourPa) {
    notes.warnings.push({
      code: 'limit-does-not-show-dryness',
      message: fillIn(sentences.warnings['limit-does-not-show-dryness'], {
        most: vacuumText(most.si),
        vapour: vacuumText(judged.vapourPa),
      }),
    })
  }
  if (found.verdict === 'kept' && judged.verdict === 'leaking') {
    notes.warnings.push({
      code: 'limit-kept-yet-leaking',
      message: sentences.warnings['limit-kept-yet-leaking'],
    })
  }
  const watchedS = limit.withinS ?? (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)
  if (limit.withinS === undefined && found.verdict === 'cannot-tell') {
    notes.warnings.push({
      code: 'limit-has-no-time',
      message: fillIn(sentences.warnings['limit-has-no-time'], {
        watched: say(duration(watchedS)),
      }),
    })
  }
  notes.steps.push({
    what: 'Hold limit',
    formula: limit.rule,
    values: { rise: pressureDifference(found.risePa), after: duration(watchedS) },
    gives: found.verdict,
  })
  return {
    id: limit.id,
    rule: limit.rule,
    verdict: found.verdict,
    rise: pressureDifference(found.risePa, 2 * Math.SQRT2 * scatterPa),
    atEnd: absolutePressure(found.atEndPa, levelPlusMinusPa),
  }
}
