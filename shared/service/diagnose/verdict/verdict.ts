import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import { MATTERS } from '../../../diagnosis/suspects.ts'
import type { Knowledge } from '../input/kinds.ts'
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

/** Readings up to which little stands between one cause and another. */
const FEW = 3
/** Most causes of a published pattern that are named together. */
const MOST_OF_A_PATTERN = 4
/** A cause of a pattern less likely than this is not named with the others. */
const LEAST_OF_A_PATTERN = 0.005
/** So many causes of a pattern, those of its headline first, are named where the model shows nothing like it. */
const FIRST_OF_A_PATTERN = 2
/** Share that a set of causes must hold where none is named. */
const SET_HOLDS = 0.9
/** A member of a class is named with it from this share of the class on. */
const MEMBER_FROM = 0.1
/** A class as wide as this names nothing that somebody could go by. */
const MOST_NAMED = 3

/** What a verdict goes by besides the posterior. */
export interface Grounds {
  readonly knowledge: Knowledge
  /** How many readings went into it. */
  readonly read: number
  /** Causes that the first published pattern stands for, the one of its headline first; none for a machine of the model. */
  readonly ofPattern: readonly Cause[]
  /** What the pressure at rest stands for, where it is surely off saturation. */
  readonly atRest?: Cause | undefined
  /** What was looked for and not found: no pattern names it. */
  readonly ruledOut?: readonly Cause[]
}

/**
 * Names a cause or a class where the readings do, else the set that holds nine tenths. What a
 * published pattern surely shown stands for is among the named, so that table and model do not
 * contradict each other: by two gauges on a machine of which little is known the pattern's causes
 * are all that can be told apart from the others.
 */
export function verdictOf(inferred: Inferred, given: Grounds): Verdict {
  const { ruledOut = [] } = given
  const grounds = {
    ...given,
    ofPattern: given.ofPattern.filter((cause) => !ruledOut.includes(cause)),
  }
  const found = withPattern(byPosterior(inferred, grounds), inferred, grounds)
  const { atRest } = grounds
  const verdict =
    atRest === undefined || found.named.includes(atRest)
      ? found
      : withCause(found, inferred, atRest)
  const { lowChargeAlone, lowChargeOfUnknown } = figures.named
  const from = given.knowledge === 'unknown' ? lowChargeOfUnknown : lowChargeAlone
  return atRest === 'undercharge' ? verdict : notLowAlone(verdict, inferred, from)
}

/** A cause less likely than this keeps no low charge company. */
const KEEPS_COMPANY = 2e-4

/**
 * Who reads of a low charge alone may fill a machine that is full: below a high share the likeliest
 * other fault is named with it, whatever a pattern says. A restriction behind a receiver shows the same.
 */
function notLowAlone(verdict: Verdict, { posterior }: Inferred, from: number): Verdict {
  const { id, named, share } = verdict
  const alone = id === 'fault' && named.length === 1 && named[0] === 'undercharge'
  if (!alone || share >= from) return verdict
  const other = posterior.causes.find(
    ({ cause, probability }) =>
      cause !== 'undercharge' &&
      cause !== 'none' &&
      cause !== 'reading-or-test-wrong' &&
      probability >= KEEPS_COMPANY,
  )
  if (other === undefined) return { ...verdict, id: 'cannot-tell' }
  return {
    id,
    named: ['undercharge', other.cause],
    share: Math.min(1, share + other.probability),
    merged: true,
  }
}

function withPattern(verdict: Verdict, inferred: Inferred, grounds: Grounds): Verdict {
  const found = asPattern(verdict, inferred, grounds)
  return inferred.misfit < figures.named.strained ? found : strained(found, inferred, grounds)
}

/** Where the readings lie beyond all that the model shows, it does not outdo the trade: both are named. */
function strained(verdict: Verdict, inferred: Inferred, { ofPattern }: Grounds): Verdict {
  const added = ofPattern
    .slice(0, FIRST_OF_A_PATTERN)
    .filter(
      (cause) =>
        !verdict.named.includes(cause) &&
        inferred.posterior.causes.some((each) => each.cause === cause),
    )
  const more = added.reduce((found, cause) => withCause(found, inferred, cause), verdict)
  const all = verdict.id === 'fault' && verdict.named.every((cause) => ofPattern.includes(cause))
  return added.length > 0 && all ? { ...more, id: 'fault', merged: true } : more
}

function asPattern(verdict: Verdict, inferred: Inferred, grounds: Grounds): Verdict {
  const { ofPattern, read, knowledge } = grounds
  const [said] = ofPattern
  if (said === undefined) return verdict
  const { causes } = inferred.posterior
  const set = causes.filter(
    ({ cause, probability }) => ofPattern.includes(cause) && probability >= LEAST_OF_A_PATTERN,
  )
  const share = set.reduce((sum, { probability }) => sum + probability, 0)
  const names = verdict.named.filter((cause) => ofPattern.includes(cause))
  const alone = verdict.id === 'fault' && names.length > 0
  const whole = set.some(({ cause }) => cause === said) && set.length <= MOST_OF_A_PATTERN
  const open = !alone || read <= FEW || knowledge === 'unknown'
  if (open && whole && share >= figures.named.withPattern) {
    const named = set.map(({ cause }) => cause)
    return { id: 'fault', named, share, merged: named.length > 1 }
  }
  if (verdict.named.includes(said) || (alone && read > FEW)) return verdict
  return withCause(verdict, inferred, said)
}

/** The same with one cause more, which the model makes less of than what was read beside it. */
function withCause(verdict: Verdict, { posterior }: Inferred, cause: Cause): Verdict {
  const added = posterior.causes.find((each) => each.cause === cause)?.probability ?? 0
  return {
    id: 'cannot-tell',
    named: [...verdict.named, cause],
    share: Math.min(1, verdict.share + added),
    merged: false,
  }
}

function byPosterior(inferred: Inferred, { knowledge, read }: Grounds): Verdict {
  const { ofTheModel, fewReadings, else: usual } = figures.named
  const from = knowledge === 'model' ? ofTheModel : read <= FEW ? fewReadings : usual
  const { posterior, classes } = inferred
  const [top] = classes
  const shareOf = (cause: Cause) =>
    posterior.causes.find((each) => each.cause === cause)?.probability ?? 0
  const members = (top?.causes ?? [])
    .filter((cause) => shareOf(cause) >= MEMBER_FROM * (top?.probability ?? 1))
    .sort((a, b) => shareOf(b) - shareOf(a))
  const share = members.reduce((sum, cause) => sum + shareOf(cause), 0)
  const [first, ...others] = members
  if (first !== undefined && share >= from && members.length <= MOST_NAMED) {
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
  if (fits && sound >= SOUND_FROM && posterior.causes[0]?.cause === 'none') {
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
