import type { Caution } from '../../shared/cautions.ts'

/**
 * What stands on every screen: what can hurt or break a rule. First aid is for afterwards and stands
 * on the sheet, notes too.
 */
export const DANGER_ON_SCREEN = ({ id, level }: Caution): boolean =>
  level !== 'note' && !id.startsWith('first-aid')

/** The dangers in short, one after the other: they are never left to the sheet. */
export const dangerText = (list: readonly Caution[]): string =>
  list
    .filter(DANGER_ON_SCREEN)
    .map(({ short }) => short.replace(/\.$/u, ''))
    .join(' · ')
