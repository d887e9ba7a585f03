import * as z from 'zod'
import type { CautionId } from '../cautions.ts'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { JOBS, pickRefrigerant } from '../fields/index.ts'
import { type Assumption, defineOperation, type Warning } from '../operation.ts'
import { lawLine } from '../rules/law-line.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { diagnose } from '../service/diagnose.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oil } from '../service/oil.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'
import { actsOf } from './acts.ts'
import { cardOf } from './card/card.ts'
import { cardOut } from './card/schema.ts'
import { stopsOf } from './card/stops.ts'
import { toldOf } from './card/told.ts'
import { checklist, checklistOut } from './checklist.ts'
import { type ComputedParts, computedOf, computedOut } from './computed.ts'
import { customerOf, customerOut } from './customer.ts'
import { distinct } from './distinct.ts'
import { computations, shownSources } from './gathered.ts'
import { identity } from './identity.ts'
import { fields, type WorkOrderInput } from './input.ts'
import { modernised } from './older.ts'
import { type Outcomes, runAll } from './run.ts'
import type { Outcome } from './section.ts'
import { missingOut, stepOut } from './step.ts'
import { visit } from './visit.ts'

const result = z.strictObject({
  title: z.string(),
  card: cardOut.describe('The visit on one card'),
  customer: customerOut.describe("The customer's copy"),
  invented: z.boolean().describe('A demonstration: nothing on it was measured'),
  job: z.enum(JOBS),
  identity: z.array(z.strictObject({ label: z.string(), value: z.string() })),
  steps: z.array(stepOut).describe('The visit, in order: only the steps that this job needs'),
  missing: z.array(missingOut).describe('All that is still to be read or given'),
  failed: z.array(z.string()).describe('Ids of the steps that were refused'),
  checklist: checklistOut.describe('What must be written down'),
  computed: computedOut.describe('The full results of the single steps'),
})

const ALWAYS: readonly CautionId[] = [
  'pressure',
  'cold-burns',
  'weigh-the-charge',
  'maker-first',
  'local-rules',
]

/** What any of its steps may add. */
const MAY_ALSO: readonly CautionId[] = [
  ...ALL_DANGERS,
  ...[
    readings,
    diagnose,
    recovery,
    charge,
    oil,
    leakTest,
    evacuation,
    charging,
    coolingCheck,
  ].flatMap(({ cautionIds }) => cautionIds),
]

/** The whole visit on one sheet. */
export const workOrder = defineOperation({
  name: 'work-order',
  summary: 'The whole visit on one sheet: what to do, in order, with every figure',
  description:
    'Takes one order (machine, refrigerant, place, person, job, couplings, parts, and what was read so far) and gives the steps of this job in the order of a visit, each with what was read, what follows from it and what is still missing, and a checklist of what must be written down. A step that is refused is reported in its place; the others stand. Run it again as readings come in.',
  fields,
  older: modernised,
  result,
  cautions: {
    always: ALWAYS,
    mayAlso: MAY_ALSO,
  },
  example: {
    invented: true,
    machine: {
      name: 'Quarry loader 7',
      kind: 'off-road',
      compressorDrive: 'open',
      meteringDevice: 'expansion-valve',
    },
    refrigerant: 'R-134a',
    labelCharge: '2 lb 6 oz',
    place: { law: 'us-federal', altitude: '1200 ft', ambient: '75 °F' },
    person: { certificates: ['us-609'], forPay: true },
    job: 'couplers-parted',
    couplings: [
      {
        name: 'Liquid line',
        couplingType: 'two-valve',
        spillVolume: '1.2 mL ±0.3 mL',
        phase: 'liquid',
      },
      {
        name: 'Suction line',
        couplingType: 'two-valve',
        spillVolume: '2.0 mL ±0.5 mL',
        phase: 'vapour',
      },
    ],
  },
  compute(input) {
    const outcomes = runAll(input)
    const { steps, sources } = visit(input, outcomes)
    const done = computations(outcomes)
    const failed = steps.filter(({ state }) => state === 'failed')
    const law = lawOf(input)
    const stops = stopsOf(outcomes)
    const ids = cautionsOf(input, outcomes)
    const card = cardOf(input, outcomes, stops, ids)
    return {
      told: toldOf(card, stops),
      ...(law === undefined ? {} : { law }),
      result: {
        title: input.order ? `${input.machine.name}: ${input.order}` : input.machine.name,
        card,
        customer: customerOf(input, outcomes, stops),
        invented: input.invented ?? false,
        job: input.job,
        identity: identity(input),
        steps,
        missing: distinct(steps.flatMap(({ missing }) => missing)),
        failed: failed.map(({ id }) => id),
        checklist: checklist(input, outcomes),
        computed: computedOf(outcomes) satisfies ComputedParts,
      },
      steps: done.flatMap(({ title, computation }) =>
        computation.steps.map((step) => ({ ...step, what: `${title}: ${step.what}` })),
      ),
      cautions: ids,
      sources: shownSources(sources, done, outcomes, steps),
      assumptions: distinct(
        done.flatMap(({ computation, where }) =>
          computation.assumptions.map(
            (entry): Assumption => ({
              ...entry,
              field: where(entry.field),
            }),
          ),
        ),
      ),
      warnings: [
        ...(input.invented
          ? [
              {
                code: 'invented',
                message: 'This order is a demonstration: nothing on it was measured.',
              },
            ]
          : []),
        ...refusedSteps(failed.map(({ title }) => title)),
        ...warningsOf(
          done.flatMap(({ title, computation }) =>
            computation.warnings.map((warning) => ({ title, ...warning })),
          ),
        ),
      ],
    }
  },
})

/** What several steps warn of is said once, for all of them. */
function warningsOf(told: readonly (Warning & { readonly title: string })[]): readonly Warning[] {
  const titles = new Map<string, Set<string>>()
  const key = ({ code, message }: Warning) => `${code} ${message}`
  for (const entry of told) {
    titles.set(key(entry), (titles.get(key(entry)) ?? new Set()).add(entry.title))
  }
  return told.flatMap(({ title, code, message }) => {
    const [first, ...others] = titles.get(key({ code, message })) ?? []
    if (title !== first) return []
    // The next one that says the same finds nothing left of it.
    titles.delete(key({ code, message }))
    return [{ code, message: `${[first, ...others].join(', ')}: ${message}` }]
  })
}

/** The line of the law, where the job opens anything. */
function lawOf({ machine, place, person, refrigerant, labelCharge, job }: WorkOrderInput) {
  if (job === 'diagnose') return undefined
  return lawLine(place?.law, {
    ...machine,
    ...person,
    machine: machine.kind,
    refrigerant: pickRefrigerant(refrigerant),
    labelCharge,
  })
}

/** What is dangerous here: by the job before anything was read, by each step, and by what was refused. */
function cautionsOf(input: WorkOrderInput, outcomes: Outcomes): readonly CautionId[] {
  // The rules are asked about every action that there is; what is done here is known better.
  const { rules: _, ...steps } = outcomes
  const ids = [
    ...ALWAYS,
    ...dangersOf({
      refrigerant: pickRefrigerant(input.refrigerant),
      compressorDrive: input.machine.compressorDrive,
      does: actsOf(input),
    }),
    ...Object.values(steps).flatMap((outcome: Outcome<unknown>) =>
      outcome.state === 'done'
        ? outcome.computation.cautions
        : outcome.state === 'absent'
          ? []
          : outcome.cautions,
    ),
  ]
  return [...new Set(ids)]
}

/** One line for all refused steps: the others stand. */
const refusedSteps = (titles: readonly string[]): readonly Warning[] =>
  titles.length === 0
    ? []
    : [
        {
          code: 'step-failed',
          message: `Refused, each for what its problems say: ${titles.join(', ')}. The other steps stand.`,
        },
      ]
