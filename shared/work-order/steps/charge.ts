import card from '../../../data/service/card.json' with { type: 'json' }
import chargeData from '../../../data/service/charge.json' with { type: 'json' }
import { say } from '../../quantity/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, state, take } from '../step.ts'
import { wentIn } from '../went-in.ts'
import { certificateToOpen } from './before-opening.ts'

/** How couplings are handled stands where they are parted. */
const elsewhere = (text: string) => text !== chargeData.advice.couplings

/** A label that is gone is no end, and its charge is never guessed. */
const WAYS_TO_THE_CHARGE = `One of: ${card.alternatives['find-charge'].join('; ')}`

/** How much goes in, by which reading of the scale, and which way in. */
export function chargeStep(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  const law = outcomes.rules.charge ? take(body, outcomes.rules.charge) : undefined
  if (law) {
    if (law.certificate.says !== certificateToOpen(outcomes)) {
      body.findings.push(law.certificate.says)
    }
    state(body, law.law, law.leakRepair.statements)
  }
  if (!input.labelCharge && outcomes.charge.state !== 'missing') {
    body.missing.push({
      what: "Charge on the machine's label",
      path: ['labelCharge'],
      hint: WAYS_TO_THE_CHARGE,
    })
  }
  massInto(body, outcomes)
  if (tooLittleToWeigh(outcomes) && !input.charging && !input.record?.charged) {
    body.findings.push('For this job alone nothing needs to be added.')
  } else {
    instruct(body, 'weigh-in')
    scaleInto(body, input, outcomes)
    wentInInto(body, input, outcomes)
  }
  return body
}

/** Inside the charge's tolerance and below what the scale can tell: nothing is asked for. */
function tooLittleToWeigh({ charge }: Outcomes): boolean {
  if (charge.state !== 'done') return false
  const { kind, bound, massToAdd, setOnScale } = charge.computation.result
  return kind === 'bound' ? bound?.verdict === 'inside' : massToAdd !== undefined && !setOnScale
}

function massInto(body: StepBody, outcomes: Outcomes): void {
  const found = take(body, outcomes.charge)
  if (!found) return
  body.findings.push(found.why)
  figure(body, 'Mass to add', found.massToAdd)
  figure(body, 'Lower end', found.massToAddFrom)
  figure(body, 'Upper end', found.massToAddTo)
  figure(body, 'Cannot exceed', found.bound?.most)
  figure(body, 'Space in the couplings', found.bound?.space)
  figure(body, 'Like couplings may spill, from', found.likeParts?.from)
  figure(body, 'Like couplings may spill, up to', found.likeParts?.to)
  figure(body, 'What-if, least missing', found.whatIfFrom)
  figure(body, 'What-if, most missing', found.whatIfTo)
  figure(body, 'Charge of the whole machine', found.totalTarget)
  figure(body, 'Change by altered parts', found.changeOfCharge)
  figure(body, 'From a new cylinder', found.newRefrigerant)
  if (!tooLittleToWeigh(outcomes)) figure(body, 'Set on the scale', found.setOnScale)
  if (found.kind === 'measure') {
    body.missing.push({
      what: 'Type of the couplings, and the mouth and both depths of each by caliper',
      path: ['couplings'],
    })
  }
  if (found.kind === 'what-if') {
    body.missing.push({
      what: 'Spill volume of the couplings, from their maker or measured: the what-if is no measurement',
      path: ['couplings'],
    })
  }
  const checks = [found.againstCharge?.text, found.againstScale?.text]
  body.findings.push(
    ...checks.flatMap((text) => text ?? []),
    ...found.advice.filter(elsewhere),
    found.measure,
  )
}

function scaleInto(body: StepBody, input: WorkOrderInput, { charging }: Outcomes): void {
  const found = take(body, charging)
  if (input.charging?.scaleStart === undefined) {
    body.missing.push({
      what: 'Scale reading before the valve is opened',
      path: ['charging', 'scaleStart'],
    })
  }
  if (!found) return
  figure(body, 'Leaves the source', found.leavesSource)
  figure(body, 'Stays in the hose', found.hose?.holdUp)
  figure(body, 'Close the valve when the scale shows', found.scale?.stop)
  if (found.cans) {
    figure(body, 'Whole cans', found.cans.whole)
    figure(body, 'From the last can', found.cans.fromLast)
  }
  for (const { text, mark, source } of [...found.routes, ...found.practice]) {
    body.instructions.push({ text, mark, source })
  }
}

/** What went in, against what should have. */
function wentInInto(body: StepBody, input: WorkOrderInput, outcomes: Outcomes): void {
  const charged = input.record?.charged
  if (!charged) {
    body.missing.push({ what: 'Mass that went in, by the scale', path: ['record', 'charged'] })
    return
  }
  body.read.push({ label: 'Went in', value: say(charged) })
  const found = wentIn(input, outcomes)
  if (!found) return
  figure(body, 'Went in, less what should', found.difference)
  body.findings.push(found.text)
}
