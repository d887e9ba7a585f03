import { breaksOpen } from '../breaks-open.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { before } from './before.ts'
import type { Build } from './built.ts'
import { charge } from './charge.ts'
import { cab, part, rejoin } from './coupling.ts'
import { oil, open, recover, replace } from './opening.ts'
import { measure, prove } from './prove.ts'
import type { CardStepId } from './schema.ts'
import { evacuate, leakTest } from './tight.ts'

export const BUILD: Readonly<Record<CardStepId, Build>> = {
  before,
  part,
  cab,
  rejoin,
  recover,
  open,
  replace,
  oil,
  'leak-test': leakTest,
  evacuate,
  charge,
  prove,
  measure,
}

/** The steps of this job in the order of the visit. */
export function stepIds(input: WorkOrderInput, outcomes: Outcomes): readonly CardStepId[] {
  const { job, cabOff, parts = [] } = input
  const oils: readonly CardStepId[] = outcomes.oil.state === 'absent' ? [] : ['oil']
  if (job === 'diagnose') return ['before', ...oils, 'measure']
  const lifts: readonly CardStepId[] = cabOff ? ['cab'] : []
  const replaces: readonly CardStepId[] = [
    ...(parts.length > 0 ? (['replace'] as const) : []),
    ...oils,
  ]
  if (job === 'couplers-parted' && !breaksOpen(input)) {
    const tests: readonly CardStepId[] = [
      ...(input.leakTest ? (['leak-test'] as const) : []),
      ...(input.evacuation ? (['evacuate'] as const) : []),
    ]
    return ['before', 'part', ...lifts, ...replaces, 'rejoin', ...tests, 'charge', 'prove']
  }
  return [
    'before',
    'recover',
    'open',
    ...lifts,
    ...replaces,
    'leak-test',
    'evacuate',
    'charge',
    'prove',
  ]
}
