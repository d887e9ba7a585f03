import { shownText, type WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { Page } from './pairs.ts'
import { hanging, widest } from './wrap.ts'

type Step = WorkOrderAnswer['result']['steps'][number]

const INDENT = 2
const GAP = 2
/** A figure that is told here even where it is not the first of its step. */
const TOLD_TOO: ReadonlySet<string> = new Set(['Set on the scale'])
/** Steps whose readings give a verdict. */
const JUDGING: ReadonlySet<Step['id']> = new Set(['measure', 'verify'])

/** The order on one screen: of each step what came out, what is refused, and how much is still to be read. */
export function glanceLines({ result, cautions }: WorkOrderAnswer, page: Page): readonly string[] {
  const heads = result.steps.map(({ title }, index) => `${index + 1}. ${title}`)
  const indent = INDENT + widest(heads) + GAP
  const dangers = cautions.filter(({ level }) => level === 'danger').length
  return [
    page.ink.heading('In short'),
    '',
    ...(dangers > 0
      ? [
          `  ${page.ink.level.danger(`DANGER: ${dangers} below, under Cautions. Read them first.`)}`,
          '',
        ]
      : []),
    ...result.steps.flatMap((step, index) =>
      hanging(
        `${' '.repeat(INDENT)}${heads[index] ?? ''}`,
        inShort(step, page),
        indent,
        page.width,
      ),
    ),
  ]
}

function inShort({ id, state, figures, findings, missing, problems }: Step, page: Page): string {
  const [refusal] = problems
  const told = figures.filter(
    ({ label, value }, index) => (index === 0 && typeof value === 'object') || TOLD_TOO.has(label),
  )
  const verdict =
    JUDGING.has(id) && figures.length > 0 ? findings.slice(0, 1).map(firstSentence) : []
  const parts = [
    ...(refusal ? [`${page.ink.error('REFUSED')}: ${refusal.message}`] : []),
    ...told.map(({ label, value }) => `${label} ${page.ink.figure(shownText(value))}`),
    ...verdict,
    ...(missing.length > 0 ? [`${missing.length} still to be read or given`] : []),
  ]
  if (parts.length > 0) return parts.join('\n')
  return state === 'complete' ? 'nothing more to be read' : 'to do'
}

/** A point inside a figure ends no sentence. */
const firstSentence = (text: string) => /^.*?\.(?=\s|$)/su.exec(text)?.[0] ?? text
