import { say } from '../../quantity/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, take, want } from '../step.ts'

/** How much oil goes in, of which kind, and where. */
export function oilStep(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  instruct(body, 'oil-before')
  if (!input.existingOil && input.oil?.newOil === undefined) {
    body.missing.push({ what: 'Oil in the system, as its label says', path: ['existingOil'] })
  }
  if (!input.oilTotal && input.oil?.oilTotal === undefined) {
    body.missing.push({ what: "Oil of the whole system, the maker's figure", path: ['oilTotal'] })
  }
  if (outcomes.recovery.state !== 'absent') {
    want(body, 'oil', input.oil, [
      'recoveredOil',
      'Oil that came out with the refrigerant, measured',
    ])
  }
  if (input.job !== 'couplers-parted') {
    want(body, 'oil', input.oil, ['leak', 'How refrigerant was lost: none, slow or sudden'])
  }
  const found = take(body, outcomes.oil)
  if (found) {
    figure(body, 'Oil to pour in', found.pourIn)
    if (found.compressor) {
      figure(body, 'All that must go in, the new compressor included', found.add)
    }
    figure(body, 'By the published spread, from', found.addFrom)
    figure(body, 'By the published spread, to', found.addTo)
    for (const { what, add } of found.lines) figure(body, what, add)
    if (found.compressor) {
      figure(body, 'Take out of the new compressor', found.compressor.drainFromNew)
      figure(body, 'Add to the new compressor', found.compressor.addToNew)
      body.findings.push(found.compressor.text)
    }
    body.findings.push(found.oilType.text, ...found.advice)
    if (found.limited) {
      body.findings.push(
        "The sum was cut at the system's total: more oil would slug the compressor.",
      )
    }
  }
  const added = input.record?.oilAdded
  if (added) body.read.push({ label: 'Put in', value: say(added) })
  return body
}
