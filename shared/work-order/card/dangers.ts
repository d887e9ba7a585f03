import { type CautionId, cautions, isOnScreen } from '../../cautions.ts'

/** What can hurt somebody in this job, a line each, the worst first. */
export const dangersOn = (ids: readonly CautionId[]): readonly string[] =>
  cautions(ids)
    .filter(isOnScreen)
    .map(({ short }) => short.replace(/\.$/u, ''))
