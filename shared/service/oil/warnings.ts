import data from '../../../data/service/oil.json' with { type: 'json' }
import type { Warning } from '../../operation.ts'
import { fillIn } from '../../sentence.ts'
import { PUBLISHED_TOTALS } from './amounts.ts'
import type { OilInput } from './fields.ts'

/** What is wrong or missing around the amount. */
export function warningsFor(
  input: OilInput,
  bounded: boolean,
  limited: boolean,
): readonly Warning[] {
  const parts = [...(input.replaced ?? []), ...(input.parts ?? []).map(({ part }) => part)]
  const opened = parts.length > 0 || input.flushed
  return [
    ...(!bounded
      ? [
          {
            code: 'oil-total-missing',
            message: fillIn(data.warnings['oil-total-missing'], { totals: PUBLISHED_TOTALS.text }),
          },
        ]
      : []),
    ...(limited
      ? [
          {
            code: 'limited-by-total',
            message: data.warnings['limited-by-total'],
          },
        ]
      : []),
    ...(opened && !parts.some((part) => part === 'drier' || part === 'accumulator')
      ? [
          {
            code: 'drier-not-replaced',
            message: data.warnings['drier-not-replaced'],
          },
        ]
      : []),
  ]
}
