import type * as z from 'zod'
import type { Answer } from '../operation.ts'
import type { ShownQuantity, ShownValue } from '../quantity/index.ts'
import { MARKS, type Source } from '../sources.ts'
import { type Block, heading, type Item, list, texts, under } from './blocks.ts'
import { distinct } from './distinct.ts'
import type { workOrder } from './work-order.ts'

/** What `work-order` answers. */
export type WorkOrderAnswer = Answer<z.output<typeof workOrder.result>>
type Step = WorkOrderAnswer['result']['steps'][number]

const LEVELS = { danger: 'Danger', warning: 'Warning', note: 'Note' } as const

const STATES: Readonly<Record<Step['state'], string>> = {
  failed: 'refused',
  missing: 'waits for readings',
  complete: 'complete',
  instructions: 'to do',
}

/** Rows that the card does not have. */
const BEHIND_THE_CARD: ReadonlySet<string> = new Set(['Kind', 'What happened'])

/**
 * What stands behind the card: cautions in whole, first aid, the steps with rules and practice, the
 * checklist, what was assumed, the sources.
 */
export function sheet(answer: WorkOrderAnswer): readonly Block[] {
  const { result, cautions, warnings, assumptions, sources } = answer
  const numbers = new Map(sources.map(({ id }, index) => [id, index + 1]))
  const aid = cautions.filter(({ id }) => id.startsWith(FIRST_AID))
  const rows = result.identity.filter(({ label }) => BEHIND_THE_CARD.has(label))
  return [
    heading('Appendix'),
    { kind: 'pairs', rows: rows.map(({ label, value }) => [label, value]) },
    heading('Cautions'),
    texts(
      cautions
        .filter((entry) => !aid.includes(entry))
        .map(({ level, text }) => `${LEVELS[level]}: ${text}`),
    ),
    ...under(
      'First aid',
      aid.map(({ text }) => text),
    ),
    ...result.steps.flatMap((step, index) => stepBlocks(step, index + 1, numbers)),
    heading('To be written down'),
    list(
      result.checklist.map(({ what, value, filled, because }) => ({
        text: `${what}${value === undefined ? '' : `: ${value}`}${because === undefined ? '' : ` (${because})`}`,
        ticked: filled,
      })),
    ),
    ...under(
      'Mind',
      // What the top of the card says is not said again.
      warnings.filter(({ code }) => code !== 'invented').map(({ message }) => message),
    ),
    ...under(
      'Assumed',
      distinct(
        assumptions.map(({ field, taken, because }) => `${field}: ${taken}, because ${because}`),
      ),
    ),
    heading('Sources'),
    list(sources.map((source, index) => ({ text: cited(source), number: index + 1 }))),
  ]
}

const FIRST_AID = 'first-aid'

function stepBlocks(step: Step, number: number, numbers: ReadonlyMap<string, number>): Block[] {
  const { id, title, state, problems, missing, read, figures, findings, instructions, rules } = step
  return [
    { kind: 'heading', text: `${number}. ${title} (${STATES[state]})` },
    ...some('Refused', problems, ({ message, hint, path }) => ({
      text: `${message}${hint === '' ? '' : ` ${hint}`} (at ${path.join('.')})`,
    })),
    ...rows(read.map(({ label, value }) => [`Read: ${label}`, value])),
    ...rows(figures.map(({ label, value }) => [label, shownText(value)])),
    // The list of what is open follows the steps as the checklist.
    ...some('What it says', id === 'records' ? [] : findings, (text) => ({ text })),
    ...some('Do', instructions, ({ text, mark, source }) => ({
      ...backed(text, mark, numbers.get(source)),
      ticked: false,
    })),
    ...some('Still to be read or given', missing, ({ what, hint, path }) => ({
      text: `${what.replace(/\.$/u, '')}${hint ? `. ${hint.replace(/\.$/u, '')}` : ''} (${path.join('.')})`,
      ticked: false,
    })),
    ...some('Rules and published practice', rules, ({ text, mark, source }) =>
      backed(text, mark, numbers.get(source)),
    ),
  ]
}

const backed = (text: string, mark: Source['mark'], source: number | undefined): Item =>
  mark === 'common-practice' ? { text: `${text} (common practice)` } : { text, source }

const some = <T>(name: string, entries: readonly T[], item: (entry: T) => Item): Block[] =>
  entries.length === 0 ? [] : [{ kind: 'list', name, items: entries.map(item) }]

const rows = (pairs: readonly (readonly [string, string])[]): Block[] =>
  pairs.length === 0 ? [] : [{ kind: 'pairs', rows: pairs }]

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
