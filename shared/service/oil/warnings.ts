import type { Warning } from '../../operation.ts'
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
            message: `Give the total oil, the machine maker's figure (oilTotal), so that the sum can be capped. ${PUBLISHED_TOTALS.text}`,
          },
        ]
      : []),
    ...(limited
      ? [
          {
            code: 'limited-by-total',
            message:
              "The parts ask for more than the system's total; the total was taken. With that much replaced, drain the rest and put in the total.",
          },
        ]
      : []),
    ...(opened && !parts.some((part) => part === 'drier' || part === 'accumulator')
      ? [
          {
            code: 'drier-not-replaced',
            message:
              'The system was opened and neither drier nor accumulator is on the list: evacuation does not take water out of the oil, a new drier does.',
          },
        ]
      : []),
  ]
}
