import type { Figure } from '../../../answer/told.ts'
import { sentences } from '../sentences.ts'
import type { WaterResult } from '../water-part.ts'
import type { Found } from './says.ts'

const { says: meaning } = sentences
/** A pressure that people read on a vacuum gauge, in its unit. */
export const SMALL_PA = 1
/** What to pull to, how long to watch, and what must not be passed. */
export function aimFigures({ target, assumed }: Found) {
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
export const waterFigure = (
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
