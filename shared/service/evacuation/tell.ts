import type { Figure, Level, Told } from '../../answer/told.ts'
import { absolutePressure, type PressureReading, widthOf } from '../../quantity/index.ts'
import type { PullDownResult } from './pull-down-part.ts'
import type { risePart } from './rise-part.ts'
import { sentences } from './sentences.ts'
import type { TargetResult } from './target-part.ts'
import type { WaterResult } from './water-part.ts'

/** What was found, of which the answer is told. */
export interface Found {
  readonly target: TargetResult
  /** Fields of the target for which common practice stands. */
  readonly assumed: readonly string[]
  readonly vacuum: PressureReading | undefined
  readonly water: WaterResult | undefined
  readonly pullDown: PullDownResult | undefined
  readonly rise: ReturnType<typeof risePart>
}

type Next = keyof typeof sentences.next

interface Says {
  readonly level: Level
  readonly headline: keyof typeof sentences.headlines
  readonly figures: readonly (Figure | undefined)[]
  readonly next: readonly (Next | false)[]
}

/** The answer in a mechanic's words: the target, or how the vacuum stands to it, or what the rise says. */
export function tell(found: Found): Told {
  const says = found.rise ? ofRise(found) : ofVacuum(found)
  return {
    level: says.level,
    headline: sentences.headlines[says.headline],
    figures: says.figures.flatMap((figure) => figure ?? []).slice(0, 6),
    next: says.next.flatMap((id) => (id === false ? [] : sentences.next[id])).slice(0, 3),
  }
}

const { says: meaning } = sentences
/** A pressure that people read on a vacuum gauge, in its unit. */
const SMALL_PA = 1
/** A fitted level is told to about as much as a vacuum gauge shows of it. */
const SHOWN_SHARE = 0.002

function aimFigures({ target, assumed }: Found) {
  const practice = (field: string) =>
    assumed.includes(field) ? ({ basis: 'common practice' } as const) : {}
  return {
    target: {
      id: 'target',
      label: 'Pull to',
      value: target.target,
      says: meaning.target,
      safe: 'down' as const,
      ...practice('target'),
    },
    holdFor: {
      id: 'holdFor',
      label: 'Watch',
      value: target.holdFor,
      says: meaning.holdFor,
      ...practice('holdFor'),
    },
    holdBelow: {
      id: 'holdBelow',
      label: 'Stay below',
      value: target.holdBelow,
      says: meaning.holdBelow,
      safe: 'down' as const,
      ...practice('holdBelow'),
    },
  }
}

/** The vapour pressure of water, rounded down: a vacuum above it boils nothing. */
const waterFigure = (
  pressure: WaterResult['vapourPressure'],
  form: WaterResult['form'],
): Figure | undefined =>
  pressure && {
    id: 'water',
    label: 'Water boils',
    value: pressure.within(undefined).sized(SMALL_PA),
    says: form === 'ice' ? meaning['water-ice'] : meaning.water,
    safe: 'down',
  }

function ofVacuum(found: Found): Says {
  const { target, vacuum, water, pullDown } = found
  const { target: aim, holdFor, holdBelow } = aimFigures(found)
  const wet = waterFigure(water?.vapourPressure, water?.form)
  const time = pullDown && {
    id: 'time',
    label: 'Pump-down',
    value: pullDown.time,
    says: meaning.time,
    safe: 'up' as const,
  }
  const ice = water?.form === 'ice' && ('warm' as const)
  if (!vacuum || target.reached === undefined) {
    return {
      level: 'check',
      headline: pullDown ? 'ask-with-time' : 'ask',
      figures: [aim, holdFor, holdBelow, time, wet],
      next: [ice, 'read-rise', 'micron-gauge'],
    }
  }
  const read: Figure = {
    id: 'vacuum',
    label: 'Vacuum',
    value: vacuum.kind === 'absolutePressure' ? vacuum.sized(SMALL_PA) : vacuum,
    says: meaning[`vacuum-${target.reached}`],
  }
  const sure = surely(found)
  const figures = [read, aim, holdFor, holdBelow, wet, sure]
  switch (target.reached) {
    case 'yes':
      return { level: 'check', headline: 'reached', figures, next: [ice, 'read-rise', 'leak-test'] }
    case 'no':
      return {
        level: 'check',
        headline: 'not-reached',
        figures,
        next: [
          ice || (water?.boils === 'no' && 'warm-deeper'),
          sure !== undefined && 'pull-on',
          'read-rise',
        ],
      }
    case 'cannot-tell':
      return sure
        ? { level: 'check', headline: 'cannot-tell-so-near', figures, next: ['read-rise'] }
        : {
            level: 'check',
            headline: 'cannot-tell-reached',
            figures,
            next: ['micron-gauge', 'read-rise'],
          }
  }
}

/** What an electronic gauge of this ± must show so that the target is surely reached. */
function surely({ vacuum, target }: Found): Figure | undefined {
  if (vacuum?.kind !== 'absolutePressure' || target.reached === 'yes') return undefined
  const share = widthOf(vacuum) / vacuum.si
  const wanted = target.target.si - widthOf(target.target)
  if (wanted <= 0) return undefined
  return {
    id: 'sure',
    label: 'Gauge shows',
    value: absolutePressure(wanted / (1 + share)).sized(SMALL_PA),
    says: 'or lower: surely at the target',
    safe: 'down',
  }
}

function ofRise(found: Found): Says {
  const { target, rise, water } = found
  if (!rise) return ofVacuum(found)
  const { result, held } = rise
  const { target: aim, holdFor, holdBelow } = aimFigures(found)
  const level: Figure = {
    id: 'level',
    label: result.plateau ? 'Levels off' : 'Stands at',
    value: result.plateau ?? result.level,
    says: result.plateau ? meaning.plateau : meaning.level,
    ...(result.plateau ? { step: SHOWN_SHARE * result.plateau.si } : {}),
  }
  const slope: Figure = {
    id: 'rise',
    label: 'Rise',
    value: result.risePerMinute,
    says: meaning.rise,
  }
  const wet = waterFigure(result.vapourPressure, water?.form)
  const loss = result.refrigerantAtRestTo && {
    id: 'loss',
    label: 'Would lose',
    value: result.refrigerantAtRestTo,
    says: meaning.loss,
    basis: 'estimated' as const,
    safe: 'up' as const,
  }
  const inside = result.refrigerantInside && {
    id: 'inside',
    label: 'Refrigerant',
    value: result.refrigerantInside,
    says: meaning.inside,
  }
  switch (result.verdict) {
    case 'leaking':
      return {
        level: 'check',
        headline: 'leaking',
        figures: [slope, level, wet, loss, holdBelow],
        next: ['find-leak', 'evacuate-again'],
      }
    case 'wet-and-leaking':
      return {
        level: 'check',
        headline: 'wet-and-leaking',
        figures: [slope, level, wet, loss, holdBelow],
        next: ['find-leak', 'dry', 'new-drier'],
      }
    case 'wet':
      return {
        level: 'check',
        headline: result.moisture === 'dissolved' ? 'wet-dissolved' : 'wet',
        figures: [level, wet, holdBelow, aim],
        next: ['dry', 'new-drier', 'evacuate-again'],
      }
    case 'levels-off-above-water':
      return {
        level: 'check',
        headline: 'levels-off-above-water',
        figures: [level, wet, inside, holdBelow, aim],
        next: ['settle-above', 'settle-same'],
      }
    case 'too-short-to-tell':
      return {
        level: 'check',
        headline: result.watchFor ? 'too-short' : 'too-few',
        figures: [watchFigure(result), level, slope, wet, holdFor, holdBelow],
        next: ['watch-on', 'more-readings'],
      }
    case 'cannot-tell':
      return {
        level: 'check',
        headline: 'cannot-tell',
        figures: [level, slope, wet, aim, holdBelow],
        next: ['finer', 'dry'],
      }
    case 'tight-and-dry': {
      const { headline, done } = dry(held, target.reached)
      return {
        level: done ? 'fine' : 'check',
        headline,
        figures: [level, slope, wet, aim, holdFor, holdBelow],
        next: done ? ['charge', 'leak-test'] : ['watch-on', 'finer'],
      }
    }
  }
}

const watchFigure = ({ watchFor }: NonNullable<Found['rise']>['result']): Figure | undefined =>
  watchFor && { id: 'watchFor', label: 'Watch on to', value: watchFor, safe: 'up' }

/** A tight and dry shape passes only with the hold that the target asks for. */
function dry(
  held: TargetResult['held'],
  reached: TargetResult['reached'],
): { readonly headline: keyof typeof sentences.headlines; readonly done: boolean } {
  if (held === 'fail') return { headline: 'dry-fail', done: false }
  if (reached === 'no') return { headline: 'dry-not-deep', done: false }
  if (held === 'not-yet') return { headline: 'dry-not-yet', done: false }
  if (held === 'cannot-tell') return { headline: 'dry-cannot-tell', done: false }
  return { headline: 'pass', done: true }
}
