import { breaksOpen } from '../breaks-open.ts'
import type { WorkOrderInput } from '../input.ts'
import { instruct, newBody, type StepBody } from '../step.ts'

/** Parting or opening, and closing what stands open. */
export function open(input: WorkOrderInput): StepBody {
  const body = newBody()
  if (input.job === 'couplers-parted') {
    if (breaksOpen(input)) instruct(body, 'prove-empty', 'cap-openings')
    instruct(body, 'join-quickly')
    return body
  }
  instruct(body, 'prove-empty', 'cap-openings', 'purge-brazing')
  return body
}
