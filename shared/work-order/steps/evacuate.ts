import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, take, want } from '../step.ts'

/** How deep, how long, and what the standing vacuum says. */
export function evacuate(input: WorkOrderInput, { evacuation }: Outcomes): StepBody {
  const body = newBody()
  instruct(body, 'not-to-find-leaks', 'both-sides-vacuum', 'hold-vacuum')
  const found = take(body, evacuation)
  want(
    body,
    'evacuation',
    input.evacuation,
    ['vacuum', 'Vacuum reached, at the system'],
    ['rise', 'Standing vacuum: times and pressures with the pump valved off'],
  )
  if (!found) return body
  const { target, water, pullDown, rise } = found
  figure(body, 'Pull down to, or lower', target.target)
  figure(body, 'Then valve off, and watch', target.holdFor)
  figure(body, 'Must stay below', target.holdBelow)
  figure(body, 'Target reached', target.reached?.replaceAll('-', ' '))
  figure(body, 'Hold', target.held?.replaceAll('-', ' '))
  figure(body, 'Water boils below', water?.vapourPressure)
  figure(body, 'A gauge here then shows', water?.gaugeNeeded)
  figure(body, 'Least pump-down time', pullDown?.time)
  if (water?.boils === 'no') {
    body.findings.push('At the vacuum reached water does not boil yet: go on.')
  }
  if (!rise) return body
  figure(body, 'Standing vacuum', rise.verdict.replaceAll('-', ' '))
  figure(body, 'Steady rise a minute', rise.risePerMinute)
  figure(body, 'Levels off at', rise.plateau)
  figure(body, 'Watch for', rise.watchFor)
  figure(body, 'Air that comes in', rise.leakRate)
  body.findings.push(rise.because)
  if (rise.limit) {
    const { rule, verdict } = rise.limit
    body.findings.push(`${rule}: ${verdict.replaceAll('-', ' ')}.`)
  }
  return body
}
