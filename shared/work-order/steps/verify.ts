import { runsOf } from '../head.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, take, want } from '../step.ts'
import { readingsInto } from './measure.ts'

/** Run it and read it again. */
export function verify(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  if (input.job !== 'diagnose') instruct(body, 'check-joints')
  const engine = runsOf(input) === 'engine'
  instruct(body, engine ? 'run-ten-minutes' : 'run-steady')
  readingsInto(body, input, outcomes)
  coolingInto(body, input, outcomes)
  instruct(body, input.job === 'diagnose' ? 'after-diagnosis' : 'caps-back')
  return body
}

/** Whether it cools: vent and pressures against published tables, as a band. */
function coolingInto(body: StepBody, input: WorkOrderInput, { cooling }: Outcomes): void {
  const found = take(body, cooling)
  want(
    body,
    'cooling',
    input.cooling,
    ['ventTemperature', 'Air out of the centre vent'],
    ['relativeHumidity', 'Relative humidity of the air into the evaporator'],
  )
  if (!found) return
  const { bands, temperatures, air, rest, clutch } = found
  figure(body, 'Vent', bands.vent.reading)
  figure(body, 'Air in less vent', air?.drop)
  figure(body, 'Dew point of the air in', air?.dewPointIn)
  figure(body, 'Vent above evaporating', temperatures?.ventAboveEvaporating)
  for (const { sentence } of [bands.high, bands.low, bands.vent]) {
    if (sentence) body.findings.push(sentence.charAt(0).toUpperCase() + sentence.slice(1))
  }
  if (rest) figure(body, 'At rest', rest.state.replaceAll('-', ' '))
  if (clutch?.cycling) body.findings.push(clutch.cycling)
}
