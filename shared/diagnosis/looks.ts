import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { FaultKind } from '../cycle/index.ts'
import { entropyBits } from './entropy.ts'
import type { Cause } from './hypotheses.ts'
import type { Ranked } from './posterior.ts'

/** Something to look at that finds a cause, or rules it out, without a number. */
export interface Look {
  readonly id: string
  readonly minutes: number
  readonly finds: readonly FaultKind[]
}

const { missed } = figures.looks
export const LOOKS = figures.looks.rows as readonly Look[]

/** What a look is worth: expected drop of the entropy over causes, bit, and for each minute. */
export function worthLooking(
  causes: readonly Ranked[],
): readonly (Look & { readonly gain: number; readonly perMinute: number })[] {
  const before = entropyBits(causes.map(({ probability }) => probability))
  return LOOKS.map((look) => {
    const finds = look.finds as readonly Cause[]
    const seen = causes.map(
      ({ cause, probability }) => probability * (finds.includes(cause) ? 1 - missed : missed),
    )
    const unseen = causes.map(({ probability }, i) => probability - (seen[i] as number))
    const after = [seen, unseen].reduce((sum, part) => {
      const total = part.reduce((a, b) => a + b, 0)
      return total > 0 ? sum + total * entropyBits(part, total) : sum
    }, 0)
    const gain = Math.max(0, before - after)
    return { ...look, gain, perMinute: gain / look.minutes }
  }).sort((a, b) => b.perMinute - a.perMinute)
}
