import * as z from 'zod'
import data from '../../data/service/visit.json' with { type: 'json' }
import type { Computed } from '../operation.ts'
import { type Quantity, quantityOut } from '../quantity/index.ts'
import { citation, type Statement as LawStatement } from '../rules/decide.ts'
import { statementTable } from '../service/statement.ts'
import { sourceTable } from '../source-table.ts'
import { markOut, type Source } from '../sources.ts'
import type { Outcome, Problem, ReadLine } from './section.ts'

export const STEP_IDS = [
  'measure',
  'before-opening',
  'recover',
  'open',
  'replace',
  'oil',
  'leak-test',
  'evacuate',
  'charge',
  'verify',
  'records',
] as const
export type StepId = (typeof STEP_IDS)[number]

export const STATES = ['failed', 'missing', 'complete', 'instructions'] as const

const path = z.array(z.union([z.string(), z.number()]))

export const missingOut = z.strictObject({ what: z.string(), path, hint: z.string().optional() })

export const stepOut = z.strictObject({
  id: z.enum(STEP_IDS),
  title: z.string(),
  state: z
    .enum(STATES)
    .describe(
      'failed: refused, see problems; missing: something is still to be read or given; complete: nothing missing; instructions: nothing to read here',
    ),
  instructions: z.array(
    z.strictObject({
      text: z.string(),
      mark: markOut,
      source: z.string().describe('Id in sources'),
    }),
  ),
  rules: z
    .array(z.strictObject({ text: z.string(), mark: markOut, source: z.string() }))
    .describe('What the law and published practice say of this step'),
  read: z.array(z.strictObject({ label: z.string(), value: z.string() })),
  figures: z.array(
    z.strictObject({ label: z.string(), value: z.union([quantityOut, z.number(), z.string()]) }),
  ),
  findings: z.array(z.string()),
  missing: z.array(missingOut),
  problems: z.array(
    z.strictObject({
      code: z.string(),
      message: z.string(),
      hint: z.string(),
      path,
      stop: z.boolean().describe('Going on would hurt somebody or break the law'),
    }),
  ),
})

export type Step = Computed<z.output<typeof stepOut>>
type Instruction = Step['instructions'][number]
export type Missing = z.output<typeof missingOut>

/** What a step of the visit gathers; the frame puts title and state to it. */
export interface StepBody {
  readonly instructions: Instruction[]
  readonly rules: Instruction[]
  readonly read: ReadLine[]
  readonly figures: { readonly label: string; readonly value: Quantity | number | string }[]
  readonly findings: string[]
  readonly missing: Missing[]
  readonly problems: Problem[]
  readonly sources: Source[]
}

/** A step with nothing in it yet. */
export const newBody = (): StepBody => ({
  instructions: [],
  rules: [],
  read: [],
  figures: [],
  findings: [],
  missing: [],
  problems: [],
  sources: [],
})

const sourceOf = sourceTable(data.sources)
const practice = statementTable(data.statements, sourceOf)
type PracticeId = keyof typeof data.statements

/** Adds instructions by their ids in data/service/visit.json. */
export function instruct(body: StepBody, ...ids: readonly PracticeId[]): void {
  for (const { text, mark, source } of practice(...ids)) {
    body.instructions.push({ text, mark, source })
    body.sources.push(sourceOf(source as keyof typeof data.sources))
  }
}

/** Adds statements of law, each with its section and the date it was checked. */
export function state(
  body: StepBody,
  place: string,
  statements: readonly Omit<LawStatement, 'url'>[],
): void {
  for (const statement of statements) {
    const { id, text, mark, applies, dependsOn } = statement
    const hangs = dependsOn.length > 0 ? `Depends on ${dependsOn.join(', ')}: ` : 'May apply: '
    const open = applies === 'yes' ? '' : hangs
    body.rules.push({
      text: `${open}${text} (${citation(statement)})`,
      mark,
      source: `${place}/${id}`,
    })
  }
}

/** Adds a figure, unless there is none. */
export function figure(
  body: StepBody,
  label: string,
  value: Quantity | number | string | undefined,
): void {
  if (value === undefined) return
  body.figures.push({ label: label.charAt(0).toUpperCase() + label.slice(1), value })
}

/**
 * Takes over what was read and what went wrong in a section.
 *
 * @returns Its result, where it has one.
 */
export function take<R>(body: StepBody, outcome: Outcome<R>): R | undefined {
  body.read.push(...outcome.read)
  if (outcome.state === 'failed') body.problems.push(outcome.problem)
  if (outcome.state === 'missing') {
    const { message, path, hint } = outcome.problem
    body.missing.push({ what: message, path: [...path], hint })
  }
  return outcome.state === 'done' ? outcome.computation.result : undefined
}

type Wanted = readonly [field: string, what: string]

/** Notes which fields of a section are still to be read. */
export function want(
  body: StepBody,
  key: string,
  section: Readonly<Record<string, unknown>> | undefined,
  ...fields: readonly Wanted[]
): void {
  for (const [field, what] of fields) {
    if (section?.[field] === undefined) body.missing.push({ what, path: [key, field] })
  }
}
