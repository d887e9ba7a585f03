import { MADE_BY } from '../../about.ts'
import type { CautionId } from '../../cautions.ts'
import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { aboutOf } from './about.ts'
import { dangersOn } from './dangers.ts'
import { STOPPED, titleOf } from './lines.ts'
import { BUILD, stepIds } from './plan.ts'
import { recordsOf } from './records.ts'
import type { Card, CardStep, CardStepId } from './schema.ts'
import type { Stop } from './stops.ts'

/** The visit on one card: stop-lines, the machine, the dangers, the steps, the records. */
export function cardOf(
  input: WorkOrderInput,
  outcomes: Outcomes,
  stops: readonly Stop[],
  ids: readonly CautionId[],
): Card {
  const { machine, order, date } = input
  const steps = saidOnce(stepIds(input, outcomes).map((id) => stepOf(id, input, outcomes)))
  return {
    title: order ?? 'untitled',
    machine: [machine.name, machine.serial, machine.hours, date]
      .filter((part) => part !== undefined)
      .join(' · '),
    about: aboutOf(input),
    stops: stops.map(({ says }) => says),
    dangers: dangersOn(ids),
    steps,
    records: recordsOf(input, outcomes),
    foot: MADE_BY,
  }
}

function stepOf(id: CardStepId, input: WorkOrderInput, outcomes: Outcomes): CardStep {
  const { lines, asks, finished } = BUILD[id](input, outcomes)
  return {
    id,
    title: titleOf(titleIn(id, input)),
    asks,
    done: finished !== undefined,
    lines: finished ? [finished] : lines,
  }
}

/** Two steps may lack the same thing: the first of them says so. */
function saidOnce(steps: readonly CardStep[]): readonly CardStep[] {
  const said = new Set<string>()
  return steps.map((step) => ({
    ...step,
    lines: step.lines.filter(({ text, ticked, oneOf }) => {
      const words = ticked === undefined && !oneOf && Object.keys(text.values).length === 0
      const before = words && text.text !== STOPPED && said.has(text.text)
      said.add(text.text)
      return !before
    }),
  }))
}

/** Carbon dioxide is let out, not recovered. */
const titleIn = (id: CardStepId, { refrigerant }: WorkOrderInput) =>
  id === 'recover' && isCarbonDioxide(pickRefrigerant(refrigerant)) ? 'let-out' : id
