import type { Cause } from '../../../diagnosis/hypotheses.ts'
import type { Inferred } from '../posterior/infer.ts'

export const VERDICTS = ['fault', 'no-fault-shown', 'reading-or-test-wrong', 'cannot-tell'] as const
export type VerdictId = (typeof VERDICTS)[number]

/** What the readings come to. */
export interface Verdict {
  readonly id: VerdictId
  /** The causes that are named, the likeliest first: together they hold `share`. */
  readonly named: readonly Cause[]
  readonly share: number
  /** Whether several are named because these readings show them alike. */
  readonly merged: boolean
  /** None of them is likelier, by the readings, than that nothing is wrong. */
  readonly soundFits?: boolean
}

/** From this share on a cause, or a class that reads alike, is named. */
const NAMED_FROM = 0.8
/** Share that a set of causes must hold where none is named. */
const SET_HOLDS = 0.9
/** A member of a class is named with it from this share of the class on. */
const MEMBER_FROM = 0.1
/** A class as wide as this names nothing that somebody could go by. */
const MOST_NAMED = 3

/** Names a cause or a class where the readings do, else the set that holds nine tenths. */
export function verdictOf(inferred: Inferred): Verdict {
  const { posterior, classes } = inferred
  const [top] = classes
  const shareOf = (cause: Cause) =>
    posterior.causes.find((each) => each.cause === cause)?.probability ?? 0
  const members = (top?.causes ?? [])
    .filter((cause) => shareOf(cause) >= MEMBER_FROM * (top?.probability ?? 1))
    .sort((a, b) => shareOf(b) - shareOf(a))
  const share = members.reduce((sum, cause) => sum + shareOf(cause), 0)
  const [first, ...others] = members
  if (first !== undefined && share >= NAMED_FROM && members.length <= MOST_NAMED) {
    const merged = others.length > 0
    if (!merged) {
      if (first === 'none') return { id: 'no-fault-shown', named: [first], share, merged }
      if (first === 'reading-or-test-wrong') return { id: first, named: [first], share, merged }
      return { id: 'fault', named: [first], share, merged }
    }
    return { id: members.includes('none') ? 'cannot-tell' : 'fault', named: members, share, merged }
  }
  const fits = soundFits(inferred)
  const sound = soundShare(inferred)
  if (fits && sound >= SOUND_FROM) {
    return { id: 'no-fault-shown', named: ['none'], share: sound, merged: false }
  }
  const set = soundFirst(holding(posterior.causes, SET_HOLDS), fits)
  return {
    id: 'cannot-tell',
    named: set.map(({ cause }) => cause),
    share: set.reduce((sum, { probability }) => sum + probability, 0),
    merged: false,
    soundFits: fits && set[0]?.cause === 'none',
  }
}

/** Share of what costs hardly any cooling from which on nothing is called wrong. */
const SOUND_FROM = 0.85
/** Share of the capacity that a fault costs which is called one. */
const MATTERS = 0.1

/** How likely it is that nothing is wrong, or nothing that costs cooling. */
const soundShare = ({ all, posterior }: Inferred): number =>
  all.reduce(
    (sum, { impact }, i) =>
      impact !== undefined && impact < MATTERS ? sum + (posterior.weights[i] as number) : sum,
    0,
  )

/** So much less likely than the best severity of the best fault a sound machine still fits. */
const FITS_FROM = 1 / 3

/** Whether the readings speak for no fault much more than for a sound machine. */
function soundFits({ posterior, priors }: Inferred): boolean {
  const factor = (cause: Cause, probability: number) => {
    const prior = priors.get(cause) ?? 0
    return prior > 0 ? probability / prior : 0
  }
  const factors = posterior.causes.map(
    ({ cause, probability }) => [cause, factor(cause, probability)] as const,
  )
  const most = Math.max(...factors.map(([, value]) => value))
  const sound = factors.find(([cause]) => cause === 'none')?.[1] ?? 0
  return sound >= FITS_FROM * most
}

/** A sound machine that fits as well is named first. */
const soundFirst = <R extends { readonly cause: Cause }>(set: readonly R[], fits: boolean) =>
  fits
    ? [
        ...set.filter(({ cause }) => cause === 'none'),
        ...set.filter(({ cause }) => cause !== 'none'),
      ]
    : set

/** Shares that were rounded add up to a little less. */
const ROUNDING = 1e-9

/** The fewest causes, likeliest first, that hold a share. */
export function holding<R extends { readonly probability: number }>(
  causes: readonly R[],
  share: number,
): readonly R[] {
  let sum = 0
  const end = causes.findIndex(({ probability }) => {
    sum += probability
    return sum >= share - ROUNDING
  })
  return causes.slice(0, end < 0 ? causes.length : end + 1)
}
