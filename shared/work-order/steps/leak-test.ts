import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, take, want } from '../step.ts'

/** Whether it holds. */
export function leakTestStep(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  const lets = isCarbonDioxide(pickRefrigerant(input.refrigerant))
  instruct(body, 'never-air', ...(lets ? [] : (['recover-trace'] as const)))
  const found = take(body, outcomes.leakTest)
  const weighed = input.leakTest?.chargeThen !== undefined
  if (!weighed) {
    want(
      body,
      'leakTest',
      input.leakTest,
      ['startPressure', 'Pressure at the start of the standing test'],
      ['startTemperature', 'Temperature of the system at the start'],
      ['endPressure', 'Pressure at its end'],
      ['endTemperature', 'Temperature of the system at the end'],
      ['elapsed', 'Time between the two readings'],
    )
    if (!input.leakTest?.lowSideRating && !input.leakTest?.ratings) {
      body.missing.push({
        what: 'Pressure that the weakest part is rated for',
        path: ['leakTest', 'lowSideRating'],
      })
    }
  }
  if (!found) return body
  const { standing, yearly, practice } = found
  if (standing) {
    figure(body, 'Standing test', standing.verdict.replaceAll('-', ' '))
    figure(body, 'Change that was read', standing.measuredChange)
    figure(body, 'Of it by temperature', standing.byTemperature)
    figure(body, 'Not explained', standing.unexplained)
    figure(body, 'Leak', standing.leakRate)
    figure(body, 'Smallest leak that this could show', standing.smallestLeak)
    body.findings.push(standing.sentence)
    if (standing.limit) {
      body.findings.push(`${standing.limit.rule}: ${standing.limit.verdict.replaceAll('-', ' ')}.`)
    }
  }
  figure(body, 'Loss a year', yearly?.perYear)
  for (const { text, mark, source } of practice) body.rules.push({ text, mark, source })
  return body
}
