import { newNotes } from '../../notes.ts'
import { mass, type Quantity, say } from '../../quantity/index.ts'
import { chargeToleranceOf } from '../../service/charge-tolerance.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, state, take } from '../step.ts'
import { certificateToOpen } from './before-opening.ts'

/** How much goes in, by which reading of the scale, and which way in. */
export function chargeStep(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  instruct(body, 'weigh-in')
  const law = outcomes.rules.charge ? take(body, outcomes.rules.charge) : undefined
  if (law) {
    if (law.certificate.says !== certificateToOpen(outcomes)) {
      body.findings.push(law.certificate.says)
    }
    state(body, law.law, law.leakRepair.statements)
  }
  if (!input.labelCharge && outcomes.charge.state !== 'missing') {
    body.missing.push({ what: "Charge on the machine's label", path: ['labelCharge'] })
  }
  massInto(body, outcomes)
  if (tooLittleToWeigh(outcomes) && !input.charging && !input.record?.charged) {
    body.findings.push('For this job alone nothing needs to be added.')
  } else {
    scaleInto(body, input, outcomes)
    wentIn(body, input, outcomes)
  }
  instruct(body, 'caps-back')
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
  body.findings.push(...checks.flatMap((text) => text ?? []), ...found.advice, found.measure)
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

/** What went in against what should have. */
function wentIn(body: StepBody, input: WorkOrderInput, outcomes: Outcomes): void {
  const charged = input.record?.charged
  if (!charged) {
    body.missing.push({ what: 'Mass that went in, by the scale', path: ['record', 'charged'] })
    return
  }
  body.read.push({ label: 'Went in', value: say(charged) })
  const result = outcomes.charge.state === 'done' ? outcomes.charge.computation.result : undefined
  const toAdd = result?.massToAdd
  if (!toAdd) return
  const difference = mass(
    charged.si - toAdd.si,
    toAdd.plusMinus === undefined && charged.plusMinus === undefined
      ? undefined
      : Math.hypot(toAdd.plusMinus ?? 0, charged.plusMinus ?? 0),
  )
  figure(body, 'Went in, less what should', difference)
  body.findings.push(wentInText(difference, input.charge?.chargeTolerance, input.labelCharge))
}

/** What went in against the tolerance of the charge: the maker's where it was given, else the published one. */
function wentInText(
  { si, plusMinus = 0 }: Quantity<'mass'>,
  given: Quantity<'mass'> | undefined,
  labelCharge: Quantity<'mass'> | undefined,
): string {
  const { from, to } = chargeToleranceOf(given, labelCharge, newNotes())
  const allowed = from.si === to.si ? say(to) : `${say(from)} to ${say(to)}`
  const off = Math.abs(si)
  const way = si < 0 ? 'less' : 'more'
  if (off + plusMinus <= from.si) {
    return `What went in lies within the tolerance of the charge (${allowed}).`
  }
  return off - plusMinus > to.si
    ? `${say(mass(off))} ${way} went in than should, outside the tolerance of the charge (${allowed}): recover, and weigh in anew.`
    : `${say(mass(off))} ${way} went in than should, about what the charge may be off (${allowed}): the maker's tolerance decides.`
}
