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
import { HOLD_LIMITS, holdLimit, judgeLimit, permitted } from './hold-limit.ts'
import type { RisePoint } from './rise-fit.ts'
import type { RiseInput } from './rise-input.ts'
import type { RiseJudgement } from './rise-view.ts'

const LIMIT_VERDICTS = ['kept', 'broken', 'cannot-tell', 'too-short-to-tell'] as const

export const limitOut = z
  .strictObject({
    id: z.string(),
    rule: z.string(),
    verdict: z.enum(LIMIT_VERDICTS),
    rise: quantityOut,
    atEnd: quantityOut,
  })
  .describe('The chosen published rule')

type LimitResult = Computed<z.output<typeof limitOut>>

/** The readings against a chosen published rule; undefined when none was chosen. */
export function limitPart(
  { limit: id, temperature }: RiseInput,
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
  const scatterPa = judged.fits.scatter * judged.fits.expectedSigmaPa
  const found = judgeLimit(limit, points, scatterPa, levelPlusMinusPa)
  const most = permitted(limit, points[0]?.pressurePa ?? 1)
  if (temperature && most.si > judged.vapourPa) {
    notes.warnings.push({
      code: 'limit-does-not-show-dryness',
      message: `This rule lets the pressure stand at ${say(most)}, above the ${say(absolutePressure(judged.vapourPa))} at which water boils here: a system that keeps it may still hold water.`,
    })
  }
  if (found.verdict === 'kept' && judged.verdict === 'leaking') {
    notes.warnings.push({
      code: 'limit-kept-yet-leaking',
      message:
        'The rule is kept, and still the pressure rises steadily: rules for a standing vacuum are coarse. Find the leak before charging.',
    })
  }
  const watchedS = limit.withinS ?? (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)
  if (limit.withinS === undefined && found.verdict === 'cannot-tell') {
    notes.warnings.push({
      code: 'limit-has-no-time',
      message: `The source of this rule does not print how long to watch: after ${say(duration(watchedS))} it is not broken, and that is all it tells.`,
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
