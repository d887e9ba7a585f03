import type * as z from 'zod'
import type { Computed, DefinedOperation } from '../operation.ts'
import { mass, quantity } from '../quantity/index.ts'
import { rules } from '../rules/rules.ts'
import type { Action } from '../rules/types.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oil } from '../service/oil.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'
import { breaksOpen } from './breaks-open.ts'
import { from, fromList, fromQuantity, shared } from './inherit.ts'
import {
  CHARGE_PART_FIELDS,
  COUPLING_FIELDS,
  type JobKind,
  OIL_PART_FIELDS,
  SPILL_FIELDS,
  type WorkOrderInput,
} from './input.ts'
import { type Inherited, type Outcome, runSection } from './section.ts'

type ResultOf<O> = O extends DefinedOperation<infer _F, infer R> ? Computed<z.output<R>> : never

export interface Outcomes {
  readonly charge: Outcome<ResultOf<typeof charge>>
  readonly charging: Outcome<ResultOf<typeof charging>>
  readonly cooling: Outcome<ResultOf<typeof coolingCheck>>
  readonly evacuation: Outcome<ResultOf<typeof evacuation>>
  readonly leakTest: Outcome<ResultOf<typeof leakTest>>
  readonly oil: Outcome<ResultOf<typeof oil>>
  readonly readings: Outcome<ResultOf<typeof readings>>
  readonly recovery: Outcome<ResultOf<typeof recovery>>
  readonly rules: Partial<Record<Action, Outcome<ResultOf<typeof rules>>>>
}

type Values = Readonly<Record<string, Inherited | undefined>>

const ABSENT = { state: 'absent', read: [] } as const

/** Actions that the rules are asked about, by job. */
const ACTIONS_OF: Readonly<Record<JobKind, readonly Action[]>> = {
  diagnose: ['open'],
  'couplers-parted': ['open', 'charge'],
  'section-opened': ['open', 'recover', 'charge'],
  'system-opened': ['open', 'recover', 'charge'],
  'pressure-lost': ['open', 'recover', 'charge'],
}

/** Runs every step that this order can feed, each on its own section and on what came before it. */
export function runAll(input: WorkOrderInput): Outcomes {
  const head = shared(input)
  const recovered = runRecovery(input, head)
  const charged = runCharge(input, head)
  return {
    rules: runRules(input, head),
    recovery: recovered,
    charge: charged,
    oil: runOil(input, head),
    leakTest: runLeakTest(input, head),
    evacuation: runEvacuation(input, head),
    readings: input.readings ? runSection(readings, 'readings', input.readings, head) : ABSENT,
    charging: runCharging(input, head, charged),
    cooling: runCooling(input, head),
  }
}

function runRules(input: WorkOrderInput, head: Values): Outcomes['rules'] {
  if (!input.place?.law) return {}
  const actions =
    ACTIONS_OF[breaksOpen(input) && input.job === 'couplers-parted' ? 'system-opened' : input.job]
  return Object.fromEntries(
    actions.map((action) => [
      action,
      runSection(rules, 'rules', undefined, {
        ...head,
        machine: from(input.machine.kind, 'machine', 'kind'),
        charge: fromQuantity(input.labelCharge, 'labelCharge'),
        action: from(action, 'job'),
      }),
    ]),
  )
}

/** Up to this charge a system sealed in a factory is a small appliance (40 CFR 82.152). */
const SMALL_KG = quantity('mass', 5, 'lb').si * (1 + 1e-9)

function runRecovery(input: WorkOrderInput, head: Values): Outcomes['recovery'] {
  if (!breaksOpen(input) && !input.recovery) return ABSENT
  const { kind, compressor, factorySealed } = input.machine
  const closed =
    kind === 'stationary' || (kind === 'off-road' && compressor === 'hermetic-or-electric')
  const sealed = closed && factorySealed === true && !((input.labelCharge?.si ?? 0) > SMALL_KG)
  const machine = sealed ? 'small-appliance' : kind
  const lawOfUs = input.place?.law === 'us-federal' && kind !== 'refrigerated-cargo'
  return runSection(recovery, 'recovery', input.recovery, {
    ...head,
    machine: lawOfUs ? from(machine, 'machine', 'kind') : undefined,
    compressorDrive: kind === 'off-road' && lawOfUs && !sealed ? head.compressorDrive : undefined,
    // A section's own inventory is not the label's: only the whole charge can be held against it.
    labelCharge: input.job === 'section-opened' ? undefined : head.labelCharge,
    on: from(input.date, 'date'),
  })
}

function runCharge(input: WorkOrderInput, head: Values): Outcomes['charge'] {
  if (input.job === 'diagnose' && !input.charge) return ABSENT
  const sealed = sealedBy(input)
  // A coupling that cannot close did not seal, whatever the section says.
  const { sealed: _, ...others } = input.charge ?? {}
  const section = sealed?.raw === false && input.charge ? others : input.charge
  return runSection(charge, 'charge', section, {
    ...head,
    job: input.job === 'diagnose' ? undefined : from(input.job, 'job'),
    couplings: couplingsFor(input),
    couplingType:
      sealed?.raw === true ? from('two-valve', 'couplings', 0, 'selfSealing') : undefined,
    sealed,
    parts: fromList(input.parts, 'parts', ['name', ...CHARGE_PART_FIELDS], ['old', 'new']),
    recovered: from(input.recovery?.recovered, 'recovery', 'recovered'),
  })
}

/**
 * The couplings that the charge counts: every parted one, so that none is passed over; of an opened
 * section those whose spill is given.
 */
function couplingsFor({ job, charge: section, couplings }: WorkOrderInput): Inherited | undefined {
  const allowed = ['name', ...COUPLING_FIELDS]
  if (job === 'section-opened') return fromList(couplings, 'couplings', allowed, SPILL_FIELDS)
  if (job !== 'couplers-parted') return undefined
  const elsewhere = section?.couplingsOn !== undefined || section?.makerCorrection !== undefined
  return fromList(couplings, 'couplings', allowed, elsewhere ? COUPLING_FIELDS : undefined)
}

/** A coupling that does not close by itself leaves nothing to correct. */
function sealedBy({ job, couplings = [] }: WorkOrderInput): Inherited | undefined {
  if (job !== 'couplers-parted' || couplings.length === 0) return undefined
  const open = couplings.findIndex(({ selfSealing }) => selfSealing === false)
  if (open >= 0) return from(false, 'couplings', open, 'selfSealing')
  return couplings.every(({ selfSealing }) => selfSealing)
    ? from(true, 'couplings', 0, 'selfSealing')
    : undefined
}

function runOil(input: WorkOrderInput, head: Values): Outcomes['oil'] {
  const parts = fromList(input.parts, 'parts', ['name', ...OIL_PART_FIELDS], ['part'])
  const total = fromQuantity(input.oilTotal, 'oilTotal')
  if (!input.oil && !parts) return ABSENT
  const { compressor } = input.machine
  return runSection(oil, 'oil', input.oil, {
    ...head,
    // Either list of the section says which parts; the order's own must not count them twice.
    parts: input.oil?.replaced === undefined ? parts : undefined,
    oilTotal: total,
    existingOil: from(input.oilType, 'oilType'),
    compressorDrive: from(compressor, 'machine', 'compressor'),
  })
}

function runLeakTest(input: WorkOrderInput, head: Values): Outcomes['leakTest'] {
  if (!input.leakTest) return ABSENT
  const { added, addedInYear } = input.leakTest
  return runSection(leakTest, 'leakTest', input.leakTest, {
    ...head,
    // The federal leak rate is worked out only where somebody says what was added.
    fullCharge: added === undefined && addedInYear === undefined ? undefined : head.labelCharge,
  })
}

function runEvacuation(input: WorkOrderInput, head: Values): Outcomes['evacuation'] {
  if (!input.evacuation && !(breaksOpen(input) && head.ambient)) return ABSENT
  return runSection(evacuation, 'evacuation', input.evacuation, {
    ...head,
    temperature: head.ambient,
  })
}

function runCharging(
  input: WorkOrderInput,
  head: Values,
  charged: Outcomes['charge'],
): Outcomes['charging'] {
  if (!input.charging) return ABSENT
  const found = charged.state === 'done' ? charged.computation.result : undefined
  const toAdd = found?.massToAdd
  // Without a mass to add (a what-if) nothing may be passed on: the whole charge would go in on top.
  const target = toAdd && (found?.totalTarget ?? toAdd)
  const inside =
    found?.kind === 'correction' && toAdd && target
      ? mass(Math.max(target.si - toAdd.si, 0), toAdd.plusMinus)
      : undefined
  return runSection(charging, 'charging', input.charging, {
    ...head,
    serviceHoseBore: from(input.charge?.serviceHoseBore, 'charge', 'serviceHoseBore'),
    serviceHoseLength: from(input.charge?.serviceHoseLength, 'charge', 'serviceHoseLength'),
    labelCharge: fromQuantity(
      inside ? target?.within(undefined) : target,
      'charging',
      'labelCharge',
    ),
    alreadyIn: fromQuantity(inside, 'charging', 'alreadyIn'),
  })
}

function runCooling(input: WorkOrderInput, head: Values): Outcomes['cooling'] {
  if (!input.cooling) return ABSENT
  const { kind } = input.machine
  const { readings: read } = input
  const high = read?.dischargePressure === undefined ? 'liquidPressure' : 'dischargePressure'
  return runSection(coolingCheck, 'cooling', input.cooling, {
    ...head,
    machine:
      kind === 'off-road' || kind === 'road-vehicle' ? from(kind, 'machine', 'kind') : undefined,
    ambient: from(read?.ambient, 'readings', 'ambient') ?? head.ambient,
    lowPressure: from(read?.suctionPressure, 'readings', 'suctionPressure'),
    highPressure: from(read?.[high], 'readings', high),
  })
}
