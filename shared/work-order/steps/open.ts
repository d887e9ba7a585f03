import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { breaksOpen } from '../breaks-open.ts'
import type { WorkOrderInput } from '../input.ts'
import { instruct, newBody, type StepBody } from '../step.ts'

/** Parting or opening, and closing what stands open. */
export function open(input: WorkOrderInput): StepBody {
  const body = newBody()
  if (input.job === 'couplers-parted') {
    if (breaksOpen(input)) instruct(body, 'prove-empty', 'cap-openings')
    instruct(body, 'hold-fixed-half', 'clean-and-cap', 'join-quickly')
    return body
  }
  const lets = isCarbonDioxide(pickRefrigerant(input.refrigerant))
  instruct(body, 'prove-empty', 'cap-openings', lets ? 'purge-brazing-empty' : 'purge-brazing')
  if (input.couplings?.length) instruct(body, 'hold-fixed-half', 'clean-and-cap')
  return body
}
