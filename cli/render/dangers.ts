import { type Caution, isOnScreen } from '../../shared/cautions.ts'

/** The dangers in short, one after the other: they are never left to the sheet. */
export const dangerText = (list: readonly Caution[]): string =>
  list
    .filter(isOnScreen)
    .map(({ short }) => short.replace(/\.$/u, ''))
    .join(' · ')
