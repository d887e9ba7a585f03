import data from '../../../data/service/card.json' with { type: 'json' }
import { type CautionId, cautions, isOnScreen } from '../../cautions.ts'
import { CAUTION_OF_TASK, type TaskId } from './lines.ts'
import type { CardStep } from './schema.ts'

/**
 * What can hurt somebody in this job, a line each; what a task of the card or the line of the law says
 * in its place is not said again.
 */
export function dangersOn(
  ids: readonly CautionId[],
  steps: readonly CardStep[],
  hasLaw: boolean,
): readonly string[] {
  const texts = new Set(steps.flatMap(({ lines }) => lines.map(({ text }) => text.text)))
  const said = new Set([
    ...Object.entries(CAUTION_OF_TASK).flatMap(([id, caution]) =>
      texts.has(data.tasks[id as TaskId].text) ? [caution] : [],
    ),
    ...(hasLaw ? ['no-venting'] : []),
  ])
  return cautions(ids)
    .filter((entry) => isOnScreen(entry) && !said.has(entry.id))
    .map(({ short }) => short)
}
