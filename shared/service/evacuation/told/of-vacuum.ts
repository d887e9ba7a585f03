import type { Figure } from '../../../answer/told.ts'
import { absolutePressure, widthOf } from '../../../quantity/index.ts'
import { sentences } from '../sentences.ts'
import { aimFigures, SMALL_PA, waterFigure } from './figures.ts'
import type { Found, Says } from './says.ts'

const { says: meaning } = sentences

/** The target, or how the vacuum that was reached stands to it. */
export function ofVacuum(found: Found): Says {
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
      return { headline: 'reached', figures, next: [ice, 'read-rise', 'leak-test'] }
    case 'no':
      return {
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
        ? { headline: 'cannot-tell-so-near', figures, next: ['read-rise'] }
        : {
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
