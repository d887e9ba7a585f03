import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, state, take, want } from '../step.ts'
import { certificateToOpen } from './before-opening.ts'

/** What should come out, how far down, and into what. */
export function recover(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  const lets = isCarbonDioxide(pickRefrigerant(input.refrigerant))
  if (lets) instruct(body, 'let-out')
  else instruct(body, 'connect-recovery', 'measure-oil')
  const law = outcomes.rules.recover ? take(body, outcomes.rules.recover) : undefined
  if (law) {
    if (law.certificate.says !== certificateToOpen(outcomes)) {
      body.findings.push(law.certificate.says)
    }
    // What binds recovery equipment, and what came out, says nothing of what is let out.
    if (!lets) state(body, law.law, [...law.equipment.statements, ...law.reuse.statements])
  }
  const found = take(body, outcomes.recovery)
  if (!lets) {
    want(
      body,
      'recovery',
      input.recovery,
      ['recovered', 'Mass that came out, by the scale or the machine'],
      ['cylinder', 'Which cylinder: refillable, with its WC, TW and date'],
    )
  }
  if (!found) {
    if (!lets) instruct(body, 'weigh-cylinder', 'wait-and-look')
    return body
  }
  const { expected, cylinder, evacuation: level } = found
  figure(body, 'Should come out, at least', expected?.least)
  figure(body, 'Should come out, at most', expected?.most)
  figure(body, 'Came out', expected?.recovered?.mass)
  figure(body, 'Share of the label charge', expected?.recovered?.ofLabel)
  figure(body, 'Missing against the label', expected?.recovered?.missing)
  if (found.fits === 'no') body.findings.push('The cylinder does not take what should come out.')
  if (found.fits === 'yes') body.findings.push('The cylinder takes what should come out.')
  if (cylinder) {
    body.findings.push(...cylinder.reasons)
    figure(body, 'Cylinder still takes', cylinder.room)
    figure(body, 'Stop when the scale shows', cylinder.stopAt)
    figure(body, 'At its highest contents it goes liquid-full at', cylinder.liquidFullAtMaximum)
    if (cylinder.requalification) {
      const { status, due } = cylinder.requalification
      figure(body, 'Requalification', `${status.replaceAll('-', ' ')}, due ${due}`)
    }
  }
  figure(body, 'Evacuate before opening to', level?.level)
  figure(body, 'A gauge here then shows', level?.gaugeReading)
  for (const { text, mark, source } of level?.rules ?? []) body.rules.push({ text, mark, source })
  for (const { text, mark, source } of found.practice) {
    body.instructions.push({ text, mark, source })
  }
  return body
}
