import { isCarbonDioxide, pickRefrigerant } from '../fields/index.ts'
import type { Source } from '../sources.ts'
import { breaksOpen } from './breaks-open.ts'
import { checklist } from './checklist.ts'
import { distinct } from './distinct.ts'
import type { WorkOrderInput } from './input.ts'
import type { Outcomes } from './run.ts'
import { STEP_IDS, type Step, type StepBody, type StepId } from './step.ts'
import { beforeOpening } from './steps/before-opening.ts'
import { chargeStep } from './steps/charge.ts'
import { evacuate } from './steps/evacuate.ts'
import { leakTestStep } from './steps/leak-test.ts'
import { oilStep } from './steps/oil.ts'
import { open } from './steps/open.ts'
import { records } from './steps/records.ts'
import { recover } from './steps/recover.ts'
import { replace } from './steps/replace.ts'
import { verify } from './steps/verify.ts'

interface Planned {
  readonly title: string
  readonly build: (input: WorkOrderInput, outcomes: Outcomes) => StepBody
}

const STEPS: Readonly<Record<StepId, Planned>> = {
  measure: { title: 'Measure', build: verify },
  'before-opening': { title: 'Before anything is opened', build: beforeOpening },
  recover: { title: 'Recover', build: recover },
  open: { title: 'Open', build: open },
  replace: { title: 'Replace', build: replace },
  oil: { title: 'Oil', build: oilStep },
  'leak-test': { title: 'Leak test', build: leakTestStep },
  evacuate: { title: 'Evacuate', build: evacuate },
  charge: { title: 'Charge', build: chargeStep },
  verify: { title: 'Verify', build: verify },
  records: {
    title: 'Records',
    build: (input, outcomes) =>
      records(
        checklist(input, outcomes)
          .filter(({ filled, because }) => !filled && because === undefined)
          .map(({ what }) => what),
      ),
  },
}

const WHOLE: readonly StepId[] = STEP_IDS.filter((id) => id !== 'measure')

/** The steps of a visit in their order: only those that the job needs, and those that were filled in. */
export function stepsOf(input: WorkOrderInput, outcomes: Outcomes): readonly StepId[] {
  const { job } = input
  const filled: Partial<Record<StepId, boolean>> = {
    recover: input.recovery !== undefined,
    replace: (input.parts?.length ?? 0) > 0,
    oil: outcomes.oil.state !== 'absent' || (input.parts?.length ?? 0) > 0,
    'leak-test': input.leakTest !== undefined,
    evacuate: input.evacuation !== undefined,
    charge: input.charge !== undefined || input.charging !== undefined,
  }
  if (job === 'diagnose') {
    return [
      'before-opening',
      ...(outcomes.oil.state === 'failed' ? (['oil'] as const) : []),
      'measure',
      ...(filled['leak-test'] ? (['leak-test'] as const) : []),
      ...(filled.charge ? (['charge'] as const) : []),
      'records',
    ]
  }
  if (job === 'couplers-parted') {
    const own: readonly StepId[] = breaksOpen(input)
      ? ['recover', 'leak-test', 'evacuate', 'charge']
      : ['charge']
    return WHOLE.filter((id) => !(id in filled) || own.includes(id) || filled[id])
  }
  return WHOLE
}

/** Couplings are parted before they are joined again; carbon dioxide is let out. */
function titleOf(id: StepId, title: string, input: WorkOrderInput): string {
  if (id === 'open' && input.job === 'couplers-parted') return 'Part, and rejoin'
  const lets = id === 'recover' && isCarbonDioxide(pickRefrigerant(input.refrigerant))
  return lets ? 'Let out' : title
}

interface Visit {
  readonly steps: readonly Step[]
  readonly sources: readonly Source[]
}

/** Every step of this job, built from what was read and what was computed. */
export function visit(input: WorkOrderInput, outcomes: Outcomes): Visit {
  const built = stepsOf(input, outcomes).map((id) => {
    const { title, build } = STEPS[id]
    return { id, title: titleOf(id, title, input), body: build(input, outcomes) }
  })
  const once = onceIn()
  return {
    steps: built.map(({ id, title, body: { sources: _, ...body } }) => ({
      id,
      title,
      state: stateOf(body),
      ...body,
      read: distinct(body.read),
      instructions: body.instructions.filter(once),
      rules: body.rules.filter(once),
      // Two parts of a step can meet the same fault of one inherited value.
      problems: distinct(body.problems),
      missing: distinct(body.missing),
    })),
    sources: built.flatMap(({ body }) => body.sources),
  }
}

/** Keeps the first of those that say the same, over all steps. */
function onceIn(): (entry: { readonly text: string }) => boolean {
  const said = new Set<string>()
  return ({ text }) => {
    const before = said.has(text)
    said.add(text)
    return !before
  }
}

function stateOf(body: Omit<StepBody, 'sources'>): Step['state'] {
  if (body.problems.length > 0) return 'failed'
  if (body.missing.length > 0) return 'missing'
  return body.read.length === 0 && body.figures.length === 0 ? 'instructions' : 'complete'
}
