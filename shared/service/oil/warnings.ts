import type { Warning } from '../../operation.ts'
import { PUBLISHED_TOTALS } from './amounts.ts'
import type { OilInput } from './gather.ts'

/** What is wrong or missing around the amount. */
export function warningsFor(
  input: OilInput,
  totalM3: number | undefined,
  limited: boolean,
): readonly Warning[] {
  const parts = [...(input.replaced ?? []), ...(input.parts ?? []).map(({ part }) => part)]
  const opened = parts.length > 0 || input.flushed
  return [
    ...(totalM3 === undefined
      ? [
          {
            code: 'system-total-missing',
            message: `Without the system's total oil nothing bounds the sum: read it from the machine's maker and give systemTotal. ${PUBLISHED_TOTALS.text}`,
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
