import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { instruct, newBody, type StepBody } from '../step.ts'
import { readingsInto } from './measure.ts'

/** Run it and read it again. */
export function verify(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  if (input.job !== 'diagnose') instruct(body, 'check-joints')
  instruct(body, 'run-ten-minutes')
  readingsInto(body, input, outcomes)
  if (input.job === 'diagnose') instruct(body, 'after-diagnosis')
  return body
}
