import type * as z from 'zod'
import { isCarbonDioxide, type OpeningJob, pickRefrigerant } from '../fields/index.ts'
import type { Computed, DefinedOperation } from '../operation.ts'
import { mass } from '../quantity/index.ts'
import { rules } from '../rules/rules.ts'
import type { Action } from '../rules/types.ts'
import { couplingItem, partItem, spillIn } from '../service/charge/input/items.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { RUNNING_FIELDS } from '../service/diagnose/input/fields.ts'
import { diagnose } from '../service/diagnose.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oilFields } from '../service/oil/fields.ts'
import { oil } from '../service/oil.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'
import { breaksOpen, openCouplings } from './breaks-open.ts'
import { type Head, headOf, type Placed } from './head.ts'
import type { WorkOrderInput } from './input.ts'
import { type Outcome, runSection } from './section.ts'

type ResultOf<O> = O extends DefinedOperation<infer _F, infer R> ? Computed<z.output<R>> : never

export interface Outcomes {
  readonly charge: Outcome<ResultOf<typeof charge>>
  readonly charging: Outcome<ResultOf<typeof charging>>
  readonly cooling: Outcome<ResultOf<typeof coolingCheck>>
  /** Causes by the machine model, where a baseline or what it asks for stands on the order. */
  readonly diagnosis: Outcome<ResultOf<typeof diagnose>>
  readonly evacuation: Outcome<ResultOf<typeof evacuation>>
  readonly leakTest: Outcome<ResultOf<typeof leakTest>>
  readonly oil: Outcome<ResultOf<typeof oil>>
  readonly readings: Outcome<ResultOf<typeof readings>>
  /** The same as taken before the work. */
  readonly readingsBefore: Outcome<ResultOf<typeof readings>>
  readonly recovery: Outcome<ResultOf<typeof recovery>>
  readonly rules: Partial<Record<Action, Outcome<ResultOf<typeof rules>>>>
}

const ABSENT = { state: 'absent', read: [] } as const

/** Actions that the rules are asked about, by job. */
const ACTIONS_OF: Readonly<Record<WorkOrderInput['job'], readonly Action[]>> = {
  diagnose: ['open'],
  'couplers-parted': ['open', 'charge'],
  'section-opened': ['open', 'recover', 'charge'],
  'system-opened': ['open', 'recover', 'charge'],
  'pressure-lost': ['open', 'recover', 'charge'],
}

/** Runs every step that this order can feed, each on its own section and on what came before it. */
export function runAll(input: WorkOrderInput): Outcomes {
  const head = headOf(input)
  const charged = runCharge(input, head)
  return {
    rules: runRules(input, head),
    recovery: runRecovery(input, head),
    charge: charged,
    oil: runOil(input, head),
    leakTest: runLeakTest(input, head),
    evacuation: runEvacuation(input, head),
    readingsBefore: isSaid(input.readingsBefore)
      ? runSection(readings, 'readingsBefore', input.readingsBefore, head)
      : ABSENT,
    readings: isSaid(input.readings)
      ? runSection(readings, 'readings', input.readings, head)
      : ABSENT,
    diagnosis: runDiagnosis(input, head),
    charging: runCharging(input, head, charged),
    cooling: runCooling(input, head),
  }
}

/** Whether anything stands in a section; an empty one is as good as none. */
const isSaid = (section: object | undefined): boolean =>
  section !== undefined && Object.values(section).some((value) => value !== undefined)

const placed = (value: unknown, ...path: (string | number)[]): Placed | undefined =>
  value === undefined ? undefined : { value, path }

function runRules(input: WorkOrderInput, head: Head): Outcomes['rules'] {
  if (!input.place?.law) return {}
  const opens = breaksOpen(input) && input.job === 'couplers-parted'
  return Object.fromEntries(
    ACTIONS_OF[opens ? 'system-opened' : input.job].map((action) => [
      action,
      runSection(rules, 'rules', undefined, head, { action: placed(action, 'job') }),
    ]),
  )
}

function runRecovery(input: WorkOrderInput, head: Head): Outcomes['recovery'] {
  // Carbon dioxide is let out: no recovery machine or cylinder takes it.
  const lets = isCarbonDioxide(pickRefrigerant(input.refrigerant))
  if ((!breaksOpen(input) || lets) && !isSaid(input.recovery)) return ABSENT
  const { labelCharge, machine, ...others } = head
  const { kind, compressorDrive } = input.machine
  // The level of an off-road machine hangs on its drive, for which the law's own step asks: what
  // comes out and what the cylinder takes need not wait for it.
  const levelKnown = kind !== 'off-road' || compressorDrive !== undefined
  return runSection(recovery, 'recovery', input.recovery, {
    ...others,
    ...(levelKnown && machine ? { machine } : {}),
    // A section's own inventory is not the label's: only the whole charge can be held against it.
    ...(input.job !== 'section-opened' && labelCharge ? { labelCharge } : {}),
  })
}

function runCharge(input: WorkOrderInput, head: Head): Outcomes['charge'] {
  if (input.job === 'diagnose' && !input.charge) return ABSENT
  return runSection(charge, 'charge', input.charge, head, handedToCharge(input))
}

/** What the rest of the order says to the charge. */
export function handedToCharge(input: WorkOrderInput) {
  const job: OpeningJob | undefined = input.job === 'diagnose' ? undefined : input.job
  return {
    job: placed(job, 'job'),
    couplings: couplingsFor(input),
    couplingType: typeOf(input),
    parts: partsFor(input, partItem.shape, ['old', 'new']),
    recovered: placed(input.recovery?.recovered, 'recovery', 'recovered'),
  }
}

const only = <E extends object>(entry: E, shape: object): Partial<E> =>
  Object.fromEntries(Object.entries(entry).filter(([name]) => name in shape)) as Partial<E>

/**
 * The couplings that the charge counts: every parted one, so that none is passed over; of an opened
 * section those whose spill is given.
 */
function couplingsFor({
  job,
  charge: section,
  couplings = [],
}: WorkOrderInput): Placed | undefined {
  if (job !== 'section-opened' && job !== 'couplers-parted') return undefined
  const told = (entry: object) => Object.keys(spillIn).some((name) => name in entry)
  const elsewhere =
    section?.couplingsOn ?? section?.parted ?? section?.couplings ?? section?.makerCorrection
  const counted =
    job === 'section-opened' || elsewhere !== undefined ? couplings.filter(told) : couplings
  return chosen(couplings, counted, couplingItem.shape, 'couplings')
}

/** A coupling that does not shut by itself leaves nothing to correct; of all others every one must be known. */
function typeOf(input: WorkOrderInput): Placed | undefined {
  const { job, couplings = [] } = input
  if (job !== 'couplers-parted') return undefined
  const [open] = openCouplings(input)
  if (open) return placed(open.couplingType, 'couplings', couplings.indexOf(open), 'couplingType')
  return couplings.length > 0 && couplings.every(({ couplingType }) => couplingType !== undefined)
    ? placed('two-valve', 'couplings', 0, 'couplingType')
    : undefined
}

/** The parts that a step takes, with the fields that it knows. */
function partsFor(
  { parts = [] }: WorkOrderInput,
  shape: object,
  wanted: readonly ('old' | 'new' | 'part')[],
): Placed | undefined {
  const counted = parts.filter((part) => wanted.some((name) => part[name] !== undefined))
  return chosen(parts, counted, shape, 'parts')
}

/** Some entries of a list of the order, with the fields that a step knows. */
function chosen<E extends object>(
  all: readonly E[],
  counted: readonly E[],
  shape: object,
  name: string,
): Placed | undefined {
  if (counted.length === 0) return undefined
  const value = counted.map((entry) => only(entry, shape))
  return { value, path: [name], at: counted.map((entry) => all.indexOf(entry)) }
}

function runOil(input: WorkOrderInput, head: Head): Outcomes['oil'] {
  const parts = partsFor(input, oilFields.parts.unwrap().element.shape, ['part'])
  const asked = input.oil !== undefined || parts !== undefined
  if (!asked && input.existingOil === undefined) return ABSENT
  const outcome = runSection(oil, 'oil', input.oil, head, {
    // Either list of the section says which parts; the order's own must not count them twice.
    parts: input.oil?.replaced === undefined ? parts : undefined,
  })
  // An oil that makes the compressor dangerous stops the work before any amount is known.
  return asked || (outcome.state === 'failed' && outcome.problem.stop) ? outcome : ABSENT
}

function runLeakTest(input: WorkOrderInput, head: Head): Outcomes['leakTest'] {
  if (!isSaid(input.leakTest)) return ABSENT
  // The air of the place alone asks for no search, and the leak rates by charge are those of the US.
  const { ambient: _, labelCharge, ...others } = head
  const federal = labelCharge && input.place?.law === 'us-federal' ? { labelCharge } : {}
  return runSection(leakTest, 'leakTest', input.leakTest, { ...others, ...federal })
}

function runEvacuation(input: WorkOrderInput, head: Head): Outcomes['evacuation'] {
  if (!isSaid(input.evacuation) && !breaksOpen(input)) return ABSENT
  return runSection(evacuation, 'evacuation', input.evacuation, head, {
    temperature: placed(input.place?.ambient, 'place', 'ambient'),
  })
}

function runCharging(
  input: WorkOrderInput,
  head: Head,
  charged: Outcomes['charge'],
): Outcomes['charging'] {
  if (!input.charging) return ABSENT
  const found = charged.state === 'done' ? charged.computation.result : undefined
  const toAdd = found?.massToAdd
  // Without a mass to add (a bound, a what-if) nothing may be passed on: the whole charge would go in on top.
  const target = toAdd && (found?.totalTarget ?? toAdd)
  const inside =
    found?.kind === 'correction' && toAdd && target
      ? mass(Math.max(target.si - toAdd.si, 0), toAdd.plusMinus)
      : undefined
  const { labelCharge: _, ...others } = head
  const outcome = runSection(charging, 'charging', input.charging, others, {
    serviceHoseBore: placed(input.charge?.serviceHoseBore, 'charge', 'serviceHoseBore'),
    serviceHoseLength: placed(input.charge?.serviceHoseLength, 'charge', 'serviceHoseLength'),
    serviceHoseStarts: placed(input.charge?.serviceHoseStarts, 'charge', 'serviceHoseStarts'),
    serviceHoseHolds: placed(input.charge?.serviceHoseHolds, 'charge', 'serviceHoseHolds'),
    labelCharge: placed(inside ? target?.within(undefined) : target, 'charging', 'labelCharge'),
    alreadyIn: placed(inside, 'charging', 'alreadyIn'),
  })
  if (target || outcome.state !== 'missing') return outcome
  // The machine's label may well be on the order: what is not known is what goes in.
  const message = 'What goes in is not known yet.'
  const path = ['charging', 'labelCharge']
  return { ...outcome, problem: { ...outcome.problem, message, hint: '', path } }
}

/**
 * What is wrong, by the readings taken before anything was opened; those of a job that opens nothing.
 * Weighed where it is asked for, and in an order to find out what is wrong as soon as device, air and
 * both pressures are there.
 */
function runDiagnosis(input: WorkOrderInput, head: Head): Outcomes['diagnosis'] {
  const asked = isSaid(input.baseline) || isSaid(input.diagnosis)
  if (!asked && !suffices(input)) return ABSENT
  const key = input.job === 'diagnose' ? 'readings' : 'readingsBefore'
  const read: Readonly<Record<string, unknown>> = input[key] ?? {}
  const cooling: Readonly<Record<string, unknown>> =
    input.job === 'diagnose' ? (input.cooling ?? {}) : {}
  const handed = RUNNING_FIELDS.map(
    (name) =>
      [name, placed(read[name], key, name) ?? placed(cooling[name], 'cooling', name)] as const,
  )
  const found = Object.fromEntries(handed.filter(([, value]) => value !== undefined))
  const pressures = ['suctionPressure', 'liquidPressure', 'dischargePressure'] as const
  if (!pressures.some((name) => found[name] ?? input.diagnosis?.[name])) return ABSENT
  const outcome = runSection(diagnose, 'diagnosis', input.diagnosis, head, {
    ...found,
    baseline: placed(input.baseline, 'baseline'),
    ...(key === 'readingsBefore' && {
      recovered: placed(input.recovery?.recovered, 'recovery', 'recovered'),
    }),
  })
  // nobody asked for what the model cannot say
  return asked || outcome.state === 'done' ? outcome : ABSENT
}

/** Whether machine and conditions are known well enough to weigh causes without being asked to. */
function suffices({ job, machine, place, readings }: WorkOrderInput): boolean {
  return (
    job === 'diagnose' &&
    machine?.meteringDevice !== undefined &&
    (place?.ambient ?? readings?.ambient) !== undefined &&
    readings?.suctionPressure !== undefined &&
    (readings.liquidPressure ?? readings.dischargePressure) !== undefined
  )
}

function runCooling(input: WorkOrderInput, head: Head): Outcomes['cooling'] {
  if (!isSaid(input.cooling)) return ABSENT
  return runSection(coolingCheck, 'cooling', input.cooling, head, handedToCooling(input, head))
}

/** What was read, for the check of the running machine too. */
export function handedToCooling(input: WorkOrderInput, head: Head) {
  const read = (name: 'ambient' | 'suctionPressure' | 'liquidPressure' | 'dischargePressure') =>
    placed(input.readings?.[name], 'readings', name)
  const discharge = read('dischargePressure')
  return {
    ambient: read('ambient') ?? head.ambient,
    suctionPressure: read('suctionPressure'),
    ...(discharge ? { dischargePressure: discharge } : { liquidPressure: read('liquidPressure') }),
  }
}
