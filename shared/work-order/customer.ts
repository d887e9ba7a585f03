import * as z from 'zod'
import data from '../../data/service/customer.json' with { type: 'json' }
import { type Sentence, sentence, sentenceOut } from '../answer/sentence.ts'
import { burns, pickRefrigerant } from '../fields/index.ts'
import type { Quantity } from '../quantity/index.ts'
import type { Stop } from './card/stops.ts'
import type { WorkOrderInput } from './input.ts'
import type { Outcomes } from './run.ts'
import type { Outcome } from './section.ts'

const lines = z.array(sentenceOut)

/** The customer's copy, as answers show it. */
export const customerOut = z.strictObject({
  who: z.string().optional().describe('Who did the work'),
  when: z.string().optional().describe('On which day'),
  asked: z.string().optional().describe('What was asked'),
  found: lines.describe('What was found'),
  done: lines.describe('What was done'),
  amounts: lines.describe('What was taken out and put in'),
  before: lines.describe('What it read before the work'),
  after: lines.describe('What it read after the work'),
  watch: lines.describe('What to look out for'),
})

/** The customer's copy before units are chosen. */
export interface Customer {
  readonly who?: string | undefined
  readonly when?: string | undefined
  readonly asked?: string | undefined
  readonly found: readonly Sentence[]
  readonly done: readonly Sentence[]
  readonly amounts: readonly Sentence[]
  readonly before: readonly Sentence[]
  readonly after: readonly Sentence[]
  readonly watch: readonly Sentence[]
}

type Values = Readonly<Record<string, Quantity | string | undefined>>

/** A sentence where everything that it names is known. */
const known = (text: string, values: Values): readonly Sentence[] =>
  Object.values(values).includes(undefined) ? [] : [sentence(text, values)]

const plain = (text: string) => sentence(text)

/** What the owner of the machine gets to read: no steps, no figures of ours, no law. */
export function customerOf(
  input: WorkOrderInput,
  outcomes: Outcomes,
  stops: readonly Stop[],
): Customer {
  const { person, date, story, job } = input
  const diagnosed = job === 'diagnose'
  return {
    who: person?.name,
    when: date,
    asked: story,
    found: foundIn(input, outcomes),
    done: doneIn(input, outcomes),
    amounts: amountsIn(input),
    before: once([
      ...readingsIn(input.readingsBefore, outcomes.readingsBefore),
      ...(diagnosed ? runningIn(input, outcomes) : []),
    ]),
    after: diagnosed ? [] : runningIn(input, outcomes),
    watch: watchIn(input, stops),
  }
}

function foundIn({ labelCharge, recovery, record, job }: WorkOrderInput, outcomes: Outcomes) {
  const read = job === 'diagnose' ? outcomes.readings : outcomes.readingsBefore
  const pattern = read.state === 'done' ? read.computation.result.patterns[0]?.causes[0] : undefined
  const whole = job === 'section-opened' ? undefined : labelCharge
  return [
    ...known(data.found.pattern, { pattern: pattern && lowered(pattern) }),
    ...known(data.found.left, { labelCharge: whole, recovered: recovery?.recovered }),
    ...known(data.found.leak, { leak: record?.leakFound }),
  ]
}

/** A sentence inside another one. */
const lowered = (text: string) =>
  `${text.charAt(0).toLowerCase()}${text.slice(1)}`.replace(/\.$/u, '')

function doneIn({ job, parts = [], record }: WorkOrderInput, outcomes: Outcomes) {
  const { leakTest, evacuation, charge } = outcomes
  const standing = leakTest.state === 'done' ? leakTest.computation.result.standing : undefined
  const rise = evacuation.state === 'done' ? evacuation.computation.result.rise : undefined
  const found = charge.state === 'done' ? charge.computation.result : undefined
  const nothing = found && !found.setOnScale && !record?.charged && found.kind !== 'measure'
  const names = parts.map(({ name, part }) => name ?? part ?? '').filter((name) => name !== '')
  return [
    plain(data.jobs[job]),
    ...(names.length === 0 ? [] : known(data.done.parts, { parts: names.join(', ') })),
    ...(standing?.verdict === 'no-leak-shown' ? [plain(data.done.tight)] : []),
    ...(standing?.verdict === 'leak' ? [plain(data.done.leaks)] : []),
    ...(rise ? [plain(data.done[rise.verdict === 'tight-and-dry' ? 'dry' : 'not-dry'])] : []),
    ...(nothing && job === 'couplers-parted' && isInside(charge)
      ? [plain(data.done.couplings)]
      : []),
  ]
}

const isInside = (charge: Outcome<unknown>) =>
  charge.state === 'done' && charge.computation.told?.level === 'fine'

function amountsIn({ refrigerant, recovery, record, oil, existingOil }: WorkOrderInput) {
  const { id } = pickRefrigerant(refrigerant).info
  const { charged, chargedFrom, oilAdded } = record ?? {}
  const kind = oil?.newOil ?? existingOil
  const { amounts } = data
  return [
    ...known(amounts.out, { recovered: recovery?.recovered, refrigerant: id }),
    ...(chargedFrom
      ? known(amounts['in-from'], { charged, refrigerant: id, from: chargedFrom })
      : known(amounts.in, { charged, refrigerant: id })),
    ...(kind
      ? known(amounts['oil-kind'], { oil: oilAdded, kind })
      : known(amounts.oil, { oil: oilAdded })),
  ]
}

/** Pressures, and in a word what they say. */
function readingsIn(
  section: WorkOrderInput['readings'],
  outcome: Outcome<unknown>,
): readonly Sentence[] {
  const high = section?.liquidPressure ?? section?.dischargePressure
  return [
    ...known(data.readings.shown, { low: section?.suctionPressure, high }),
    ...verdictOf(outcome),
  ]
}

function verdictOf(outcome: Outcome<unknown>): readonly Sentence[] {
  const level = outcome.state === 'done' ? outcome.computation.told?.level : undefined
  if (level === undefined) return []
  return [plain(data.readings[level === 'information' ? 'fine' : level])]
}

/** What the running machine read, and out of its vents. */
function runningIn(input: WorkOrderInput, outcomes: Outcomes): readonly Sentence[] {
  return once([
    ...readingsIn(input.readings, outcomes.readings),
    ...known(data.readings.vent, { vent: input.cooling?.ventTemperature }),
    ...verdictOf(outcomes.cooling),
  ])
}

/** The first of those that say the same; figures of two readings differ by more than their words. */
const once = (lines: readonly Sentence[]): readonly Sentence[] =>
  lines.filter(
    (line, index) =>
      Object.keys(line.values).length > 0 ||
      lines.findIndex(({ text }) => text === line.text) === index,
  )

function watchIn({ job, machine, refrigerant }: WorkOrderInput, stops: readonly Stop[]) {
  const { watch } = data
  return [
    ...(stops.length > 0 ? [watch.stop] : []),
    ...(job === 'couplers-parted' ? [watch.couplings] : []),
    watch['cools-less'],
    ...(burns(pickRefrigerant(refrigerant)) ? [watch.flammable] : []),
    ...(machine.compressorDrive === 'electric' ? [watch.electric] : []),
  ].map(plain)
}
