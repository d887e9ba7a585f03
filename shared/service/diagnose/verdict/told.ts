import { fitting } from '../../../answer/fitting.ts'
import {
  type Figure,
  LONGEST_HEADLINE,
  MOST_FIGURES,
  MOST_NEXT,
  type Told,
} from '../../../answer/told.ts'
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import type { Doubt } from '../../../diagnosis/mistakes.ts'
import type { Ranked } from '../../../diagnosis/posterior.ts'
import { fillIn } from '../../../sentence.ts'
import type { NextStep } from './next.ts'
import { capital, inTenths, listed, nameOf, stepText, TEXTS } from './texts.ts'
import type { Verdict } from './verdict.ts'

const { causes: texts, headlines, words, labels } = TEXTS
/** From this share on a cause is very likely. */
const VERY_FROM = 0.9

export interface Known {
  readonly verdict: Verdict
  readonly causes: readonly Ranked[]
  readonly steps: readonly NextStep[]
  /** Where a reading or the test is wrong: which, the likeliest first. */
  readonly doubts: readonly Doubt[]
  /** The low side lies below the pressure of the air. */
  readonly inVacuum: boolean
  /** Of the readings themselves: superheat, subcooling and so on. */
  readonly figures: readonly Figure[]
}

/** The likeliest cause or the causes that read alike, as many as there is room for, and what to do about it. */
export function diagnoseTold(known: Known): Told {
  const { verdict, figures } = known
  const next = nextOf(known)
  const [first = TEXTS.nothingMore] = next
  const own = causeFigures(known)
  return {
    level: verdict.id === 'no-fault-shown' ? 'information' : 'check',
    headline: headlineOf(verdict, first),
    figures: [...own, ...figures.slice(0, MOST_FIGURES - own.length)],
    next: next.map(capital).slice(0, MOST_NEXT),
  }
}

function headlineOf({ id, named, share, merged, soundFits }: Verdict, first: string): string {
  const [cause = 'none'] = named
  if (id === 'fault' && !merged) {
    return fill(headlines.fault, {
      cause: capital(nameOf(cause)),
      word: share >= VERY_FROM ? words.very : words.likely,
      do: first,
    })
  }
  if (id === 'no-fault-shown' || id === 'reading-or-test-wrong') {
    return fill(headlines[id], { do: id === 'no-fault-shown' ? first : capital(first) })
  }
  const key = soundFits
    ? 'sound-fits'
    : id === 'fault'
      ? 'merged'
      : merged
        ? 'alike'
        : 'cannot-tell'
  const causes = faultsFirst(soundFits ? named.slice(1) : named)
  const naming = (most: number) => {
    const list = listed(causes, most)
    const starts = key === 'merged' || key === 'alike'
    return fill(headlines[key], { causes: starts ? capital(list) : list, do: capital(first) })
  }
  const length = (text: string) => text.replace('{first}', inTenths(share)).length
  const ways = (soundFits ? [2, 1] : [3, 2, 1]).map(naming)
  return fitting(ways, LONGEST_HEADLINE, length)
}

/** A mistake of the test is named behind what is wrong with the machine. */
const faultsFirst = (named: readonly Cause[]): readonly Cause[] => [
  ...named.filter((cause) => cause !== 'reading-or-test-wrong'),
  ...named.filter((cause) => cause === 'reading-or-test-wrong'),
]

/** Slots of words only: those of figures stay for the frame. */
const fill = (text: string, values: Readonly<Record<string, string>>) =>
  fillIn(text, { first: '{first}', ...values })

/** What to do: first about a cause that is named alone, else what parts them; never to add by pressure. */
function nextOf(known: Known): readonly string[] {
  const { named } = known.verdict
  const ways = [...(known.inVacuum ? [TEXTS.stopInVacuum] : []), ...waysOf(known)]
  return named.includes('undercharge') && named.length > 1
    ? [...ways.slice(0, MOST_NEXT - 1), TEXTS.addNothing]
    : ways
}

function waysOf({ verdict, steps, doubts }: Known): readonly string[] {
  const { id, named, merged } = verdict
  const further = steps.map(stepText)
  const does = named.map((cause) => doesAbout(cause, doubts))
  const list =
    id !== 'cannot-tell' && !merged
      ? [...does, ...further]
      : [...further.slice(0, 2), ...does, ...further.slice(2)]
  const alone = named.length === 1
  return [...new Set(list)].filter((text) => text !== texts.undercharge.does || alone)
}

/** A reading that does not fit the others is checked before anything else is. */
function doesAbout(cause: Cause, [doubt]: readonly Doubt[]): string {
  if (cause !== 'reading-or-test-wrong' || doubt === undefined) return texts[cause].does
  return TEXTS.doubts[doubt]
}

/** The named ones together, then the likeliest others. */
function causeFigures({ verdict, causes }: Known): readonly Figure[] {
  const others = causes
    .filter(
      ({ cause, probability }) =>
        !verdict.named.includes(cause) && Math.round(probability * 10) >= 1,
    )
    .slice(0, 1)
  return [
    {
      id: 'first',
      label: labels.first,
      value: inTenths(verdict.share),
      says: saysOf(verdict, causes),
    },
    ...others.map(({ cause, probability }) => ({
      id: 'second',
      label: labels.second,
      value: inTenths(probability),
      says: nameOf(cause),
    })),
  ]
}

function saysOf({ named }: Verdict, causes: readonly Ranked[]): string {
  const [only, ...others] = named
  if (only === undefined) return ''
  if (others.length > 0) return listed(faultsFirst(named))
  const severity = causes.find(({ cause }) => cause === only)?.severity ?? 0
  return severity > 0 ? `${nameOf(only)}, ${severityWord(severity)}` : nameOf(only)
}

/** How bad, of what such a fault can be. */
const severityWord = (severity: number) =>
  severity < 0.25
    ? TEXTS.severity.slight
    : severity < 0.6
      ? TEXTS.severity.clear
      : TEXTS.severity.severe

/** Whether what is told to do opens the system. */
export const opensIt = ({ verdict, steps }: Pick<Known, 'verdict' | 'steps'>): boolean =>
  verdict.named.some((cause) => (TEXTS.openingCauses as readonly Cause[]).includes(cause)) ||
  steps.slice(0, MOST_NEXT).some(({ id }) => TEXTS.opening.includes(id))
