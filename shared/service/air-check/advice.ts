import type data from '../../../data/service/air-check.json'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { AirCheckInput } from './fields.ts'
import type { Verdict } from './verdict.ts'

/** Names of the statements that say what to do now. */
export function advice(
  r: Refrigerant,
  verdict: Verdict,
  { container, recycled }: AirCheckInput,
  farAbove = false,
): readonly (keyof typeof data.statements)[] {
  if (farAbove) return ['far-above']
  const blend = r.info.kind === 'zeotrope' ? (['zeotrope'] as const) : []
  const isAir = verdict === 'over-limit' || verdict === 'air-shown'
  if (container === 'system') return isAir ? ['system-recover', ...blend] : [...blend]
  if (verdict === 'within-limit' || verdict === 'no-air-shown') {
    if (recycled === true) return verdict === 'within-limit' ? ['may-use'] : [...blend]
    return recycled === false
      ? ['not-yet-recycled', ...blend]
      : [
          ...(verdict === 'within-limit' ? (['may-use'] as const) : []),
          'not-yet-recycled',
          ...blend,
        ]
  }
  if (!isAir) return ['store', 'twelve-hours', 'instruments', ...blend]
  if (verdict === 'air-shown') return ['no-published-limit', ...blend]
  return recycled === false
    ? ['not-yet-recycled']
    : ['vent-into-machine', 'shake-and-wait', 'recycle-all', 'another-refrigerant']
}

/** Names of the published shares of air that this one may be compared with. */
export function comparisons(
  r: Refrigerant,
  { contents }: AirCheckInput,
): readonly (keyof typeof data.statements)[] {
  const { id } = r.info
  return [
    ...(id === 'R-134a' || id === 'R-1234yf' ? (['new-air'] as const) : []),
    ...(contents && (id === 'R-134a' || id === 'R-1234yf') ? (['recycled-purity'] as const) : []),
    ...(contents && id === 'R-12' ? (['recycled-purity-r12'] as const) : []),
  ]
}
