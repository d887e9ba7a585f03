import type { WorkOrderInput } from '../input.ts'
import { figure, instruct, newBody, type StepBody } from '../step.ts'

const DRIERS = /drier|dryer|accumulator|desiccant/iu

/** Parts that go in, and the drier that an opened system asks for. */
export function replace(input: WorkOrderInput): StepBody {
  const body = newBody()
  const parts = input.parts ?? []
  parts.forEach((part, index) => {
    figure(body, `Part ${index + 1}`, part.name ?? part.part ?? 'not named')
  })
  if (!input.parts) {
    body.missing.push({ what: 'Parts that are replaced; an empty list says none', path: ['parts'] })
  }
  instruct(body, 'new-seals')
  if (input.job === 'couplers-parted') return body
  instruct(body, 'replace-drier', 'drier-last', 'drier-dries-oil')
  const drier = parts.some(({ name, part }) => DRIERS.test(`${name ?? ''} ${part ?? ''}`))
  if (input.parts && !drier) {
    body.findings.push(
      'No receiver-drier or accumulator is among the parts: it is replaced whenever the system was opened.',
    )
  }
  return body
}
