import type * as z from 'zod'
import type { Answer } from '../operation.ts'
import type { ShownQuantity, ShownValue } from '../quantity/index.ts'
import { MARKS, type Source } from '../sources.ts'
import type { workOrder } from './work-order.ts'

/** What `work-order` answers. */
export type WorkOrderAnswer = Answer<z.output<typeof workOrder.result>>
type Step = WorkOrderAnswer['result']['steps'][number]

/** The sheet as blocks, so that every door prints the same in its own form. */
export type Block =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'pairs'; readonly rows: readonly (readonly [label: string, value: string])[] }
  | { readonly kind: 'list'; readonly name?: string; readonly items: readonly Item[] }

export interface Item {
  readonly text: string
  /** For a box to tick: whether it is ticked; undefined where there is none. */
  readonly ticked?: boolean
  /** Number of the source that stands behind it. */
  readonly source?: number | undefined
  /** Its own number, where it is a source. */
  readonly number?: number
}

const DEMONSTRATION = 'Demonstration: the machine is invented and nothing here was measured.'

const LEVELS = { danger: 'Danger', warning: 'Warning', note: 'Note' } as const

const STATES: Readonly<Record<Step['state'], string>> = {
  failed: 'refused',
  missing: 'waits for readings',
  complete: 'complete',
  instructions: 'to do',
}

/** The whole sheet in order: identity, cautions, what is missing, the steps, the checklist, the fine print. */
export function sheet({ result, cautions, warnings, assumptions, sources }: WorkOrderAnswer) {
  const numbers = new Map(sources.map(({ id }, index) => [id, index + 1]))
  const blocks: Block[] = [
    { kind: 'title', text: `Work order: ${result.title}` },
    ...(result.invented ? [{ kind: 'note', text: DEMONSTRATION } as const] : []),
    { kind: 'pairs', rows: result.identity.map(({ label, value }) => [label, value]) },
    { kind: 'heading', text: 'Cautions' },
    list(cautions.map(({ level, text }) => ({ text: `${LEVELS[level]}: ${text}` }))),
    ...result.steps.flatMap((step, index) => stepBlocks(step, index + 1, numbers)),
    { kind: 'heading', text: 'To be written down' },
    list(
      result.checklist.map(({ what, value, filled, because }) => ({
        text: `${what}${value === undefined ? '' : `: ${value}`}${because === undefined ? '' : ` (${because})`}`,
        ticked: filled,
      })),
    ),
    ...finePrint(
      'Mind',
      warnings.map(({ message }) => message),
    ),
    ...finePrint(
      'Assumed',
      assumptions.map(({ field, taken, because }) => `${field}: ${taken}, because ${because}`),
    ),
    { kind: 'heading', text: 'Sources' },
    list(sources.map((source, index) => ({ text: cited(source), number: index + 1 }))),
  ]
  return blocks
}

function stepBlocks(step: Step, number: number, numbers: ReadonlyMap<string, number>): Block[] {
  const { title, state, problems, missing, read, figures, findings, instructions, rules } = step
  return [
    { kind: 'heading', text: `${number}. ${title} (${STATES[state]})` },
    ...some('Refused', problems, ({ message, hint, path }) => ({
      text: `${message}${hint === '' ? '' : ` ${hint}`} (at ${path.join('.')})`,
    })),
    ...rows(read.map(({ label, value }) => [`Read: ${label}`, value])),
    ...rows(figures.map(({ label, value }) => [label, shownText(value)])),
    ...some('What it says', findings, (text) => ({ text })),
    ...some('Do', instructions, ({ text, mark, source }) => ({
      ...backed(text, mark, numbers.get(source)),
      ticked: false,
    })),
    ...some('Still to be read or given', missing, ({ what, hint, path }) => ({
      text: `${what}${hint ? `. ${hint}` : ''} (${path.join('.')})`,
      ticked: false,
    })),
    ...some('Rules and published practice', rules, ({ text, mark, source }) =>
      backed(text, mark, numbers.get(source)),
    ),
  ]
}

const backed = (text: string, mark: Source['mark'], source: number | undefined): Item =>
  mark === 'common-practice' ? { text: `${text} (common practice)` } : { text, source }

const list = (items: readonly Item[]): Block => ({ kind: 'list', items })

const some = <T>(name: string, entries: readonly T[], item: (entry: T) => Item): Block[] =>
  entries.length === 0 ? [] : [{ kind: 'list', name, items: entries.map(item) }]

const rows = (pairs: readonly (readonly [string, string])[]): Block[] =>
  pairs.length === 0 ? [] : [{ kind: 'pairs', rows: pairs }]

const finePrint = (name: string, texts: readonly string[]): Block[] =>
  texts.length === 0 ? [] : [{ kind: 'heading', text: name }, list(texts.map((text) => ({ text })))]

const cited = ({ title, where, mark, checked, url, note }: Source) =>
  [title, where, MARKS[mark], checked && `checked ${checked}`, note, url]
    .filter((text) => text)
    .join('; ')

/** A shown figure in words: "1.5 ±0.4 g", the other unit system in brackets. */
export function shownText(shown: ShownQuantity | number | string): string {
  if (typeof shown !== 'object') return String(shown)
  const first = valueText(shown)
  return shown.also ? `${first} (${valueText(shown.also)})` : first
}

const valueText = ({ value, unit, plusMinus }: ShownValue) =>
  plusMinus === undefined ? `${value} ${unit}` : `${value} ±${plusMinus} ${unit}`
