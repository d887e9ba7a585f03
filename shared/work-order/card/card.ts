import * as z from 'zod'
import { headlineOf, type Sentence, sentence, sentenceOut } from '../../answer/sentence.ts'
import type { Told } from '../../answer/told.ts'
import { refrigerant } from '../../refrigerant/index.ts'
import { CERTIFICATES } from '../../rules/library.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import type { Outcome } from '../section.ts'
import { jobName, type Line, record, type StepId, titleOf, written } from './lines.ts'
import { buildStep, stepIds } from './steps.ts'

const lineOut = z.strictObject({
  text: sentenceOut.describe('The task, or the figure and what it means'),
  ticked: z.boolean().optional().describe('Whether its box is ticked; no box where absent'),
})

export const cardOut = z.strictObject({
  title: z.string().describe('Name of the order'),
  machine: z.string().describe('Machine, serial number, hours, date'),
  about: z.array(sentenceOut).describe('Refrigerant, oil, drive, place, person, job'),
  stops: z.array(sentenceOut).describe('What is forbidden or dangerous: read first'),
  steps: z
    .array(
      z.strictObject({
        id: z.string().describe('Name of the step'),
        title: z.string().describe('Its title'),
        done: z.boolean().describe('Whether everything asked for is written down'),
        lines: z.array(lineOut).describe('Tasks and figures in their order'),
      }),
    )
    .describe('The steps of the visit that this job has'),
  records: z.array(lineOut).describe('What is written down in the end'),
})

export interface Card {
  readonly title: string
  readonly machine: string
  readonly about: readonly Sentence[]
  readonly stops: readonly Sentence[]
  readonly steps: readonly {
    readonly id: StepId
    readonly title: string
    readonly done: boolean
    readonly lines: readonly Line[]
  }[]
  readonly records: readonly Line[]
}

/** The visit on one card: stop-lines, the machine, the steps with their figures and blanks, the records. */
export function cardOf(input: WorkOrderInput, outcomes: Outcomes): Card {
  const { machine, order, date } = input
  return {
    title: order ?? 'Work order',
    machine: [machine.name, machine.serial, machine.hours, date]
      .filter((part) => part !== undefined)
      .join(' · '),
    about: aboutOf(input),
    stops: stopsOf(outcomes),
    steps: stepIds(input, outcomes).map((id) => {
      const lines = buildStep(id, input, outcomes)
      return { id, title: titleOf(id), done: isDone(lines), lines }
    }),
    records: recordsOf(input, outcomes),
  }
}

/** A step is done once every figure it asks for is written down; boxes without a figure are ticked on paper. */
function isDone(lines: readonly Line[]): boolean {
  const asked = lines.filter(({ text }) => Object.keys(text.values).length > 0)
  const boxes = asked.filter(({ ticked }) => ticked !== undefined)
  return boxes.length > 0 && boxes.every(({ ticked }) => ticked === true)
}

function aboutOf(input: WorkOrderInput): readonly Sentence[] {
  const { machine, place = {}, person = {}, labelCharge, existingOil, oilTotal, job } = input
  const inside = [
    '{refrigerant}',
    labelCharge ? '{labelCharge}' : 'label charge {labelCharge}',
    existingOil ? (oilTotal ? '{oil}, {oilTotal}' : '{oil}') : '',
    machine.meteringDevice?.replace('-', ' ') ?? '',
    machine.compressorDrive ? `${machine.compressorDrive} drive` : '',
  ]
  const where = [
    place.barometer ? '{barometer}' : place.altitude ? '{altitude}' : 'sea level assumed',
    place.law
      ? `law ${place.law === 'us-federal' ? 'US' : place.law.toUpperCase()}`
      : 'law not given',
    person.name ? '{person}' : '',
    person.certificates ? certificatesText(person.certificates) : 'certificate ____',
  ]
  const joined = (parts: readonly string[]) => parts.filter((part) => part !== '').join(' · ')
  return [
    sentence(joined(inside), {
      refrigerant: refrigerant(input.refrigerant).info.id,
      labelCharge: written(labelCharge, 'mass'),
      oil: existingOil,
      oilTotal,
    }),
    sentence(joined(where), {
      altitude: place.altitude,
      barometer: place.barometer,
      person: person.name,
    }),
    sentence(input.story === undefined ? jobName(job) : `${jobName(job)}: ${firstOf(input.story)}`),
  ]
}

/** Braces in what a person wrote are no slots. */
const firstOf = (story: string) =>
  (/^.*?\.(?=\s|$)/su.exec(story)?.[0] ?? story).slice(0, 160).replace(/[{}]/gu, '')

const certificatesText = (ids: readonly (keyof typeof CERTIFICATES)[]) =>
  ids.length === 0 ? 'no certificate' : `${ids.map((id) => CERTIFICATES[id]).join(', ')}: confirm`

/** What any step forbids or calls dangerous, each once. */
function stopsOf({ rules, ...others }: Outcomes): readonly Sentence[] {
  const outcomes: readonly Outcome<unknown>[] = [...Object.values(rules), ...Object.values(others)]
  const found = outcomes.flatMap((outcome) => {
    if (outcome.state === 'done') {
      const { told } = outcome.computation
      return told && isStop(told) ? [headlineOf(told)] : []
    }
    if (outcome.state === 'failed' && outcome.problem.stop) {
      return [sentence(`${outcome.problem.message} ${outcome.problem.hint}`.trim())]
    }
    return []
  })
  return [...new Map(found.map((entry) => [entry.text, entry])).values()]
}

export const isStop = ({ level }: Told): boolean => level === 'stop'

function recordsOf(input: WorkOrderInput, outcomes: Outcomes): readonly Line[] {
  const { person = {}, record: kept = {}, recovery, job, date } = input
  const asked = outcomes.rules.open
  const statements =
    asked?.state === 'done' ? asked.computation.result.records.statements.length : 0
  const worked = job !== 'diagnose'
  const recovers = outcomes.recovery.state !== 'absent'
  return [
    record('who', { name: person.name, date }),
    ...(worked
      ? [
          record('amounts', {
            recovered: written(recovery?.recovered, 'mass'),
            charged: written(kept.charged, 'mass'),
            oil: written(kept.oilAdded, 'volume'),
          }),
          record('kind', { kind: kept.chargedFrom }),
        ]
      : []),
    ...(recovers ? [record('sent-to', { sentTo: kept.sentTo })] : []),
    ...(worked && recovers ? [record('leak', { leak: kept.leakFound })] : []),
    ...(statements > 0
      ? [{ ...record('by-law', { count: String(statements) }), ticked: false }]
      : []),
  ]
}
