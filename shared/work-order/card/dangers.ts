import data from '../../../data/service/card.json' with { type: 'json' }
import { type CautionId, cautions, isOnScreen } from '../../cautions.ts'

/** A card has many dangers at once: each in as few words as still say what to do. */
const IN_FEW_WORDS: Readonly<Partial<Record<string, string>>> = data.dangers

/** What can hurt somebody in this job, a line each, the worst first. */
export const dangersOn = (ids: readonly CautionId[]): readonly string[] =>
  cautions(ids)
    .filter(isOnScreen)
    .map(({ id, short }) => IN_FEW_WORDS[id] ?? short.replace(/\.$/u, ''))
