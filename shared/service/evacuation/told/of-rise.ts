import type { Figure } from '../../../answer/told.ts'
import { sentences } from '../sentences.ts'
import type { TargetResult } from '../target-part.ts'
import { aimFigures, waterFigure } from './figures.ts'
import type { Found, Says } from './says.ts'

const { says: meaning } = sentences
/** A fitted level is told to about as much as a vacuum gauge shows of it. */
const SHOWN_SHARE = 0.002

/** What a standing vacuum says. */
export function ofRise(found: Found, rise: NonNullable<Found['rise']>): Says {
  const { target, water } = found
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
        headline: 'leaking',
        figures: [slope, level, wet, loss, holdBelow],
        next: ['find-leak', 'evacuate-again'],
      }
    case 'wet-and-leaking':
      return {
        headline: 'wet-and-leaking',
        figures: [slope, level, wet, loss, holdBelow],
        next: ['find-leak', 'dry', 'new-drier'],
      }
    case 'wet':
      return {
        headline: result.moisture === 'dissolved' ? 'wet-dissolved' : 'wet',
        figures: [level, wet, holdBelow, aim],
        next: ['dry', 'new-drier', 'evacuate-again'],
      }
    case 'levels-off-above-water':
      return {
        headline: 'levels-off-above-water',
        figures: [level, wet, inside, holdBelow, aim],
        next: ['settle-above', 'settle-same'],
      }
    case 'too-short-to-tell':
      return {
        headline: result.watchFor ? 'too-short' : 'too-few',
        figures: [watchFigure(result), level, slope, wet, holdFor, holdBelow],
        next: ['watch-on', 'more-readings'],
      }
    case 'cannot-tell':
      return {
        headline: 'cannot-tell',
        figures: [level, slope, wet, aim, holdBelow],
        next: ['finer', 'dry'],
      }
    case 'tight-and-dry': {
      const { headline, done } = dry(held, target.reached)
      return {
        ...(done ? { level: 'fine' } : {}),
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
