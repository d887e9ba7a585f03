import type { WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { Page } from './pairs.ts'
import { hanging, paragraph } from './wrap.ts'

type Card = WorkOrderAnswer['result']['card']

const INDENT = 2

/** What the customer gets: machine and job, what was done with its figures, what is still open; no dangers, boxes or rules. */
export function customerLines({ result }: WorkOrderAnswer, page: Page): readonly string[] {
  const { card, invented } = result
  const done = card.steps.filter((step) => step.done)
  const open = card.steps.filter((step) => !step.done)
  const kept = card.records.filter(({ ticked }) => ticked === true)
  return [
    ...paragraph(page.ink.title(card.title), 0, page.width),
    ...paragraph(card.machine, 0, page.width),
    ...paragraph(card.about.at(-1) ?? '', 0, page.width),
    ...(invented ? paragraph('Demonstration: invented, nothing was measured', 0, page.width) : []),
    ...listed('Done', done.flatMap(whatCame), page),
    ...listed('Not ticked off yet', open.flatMap(whatCame), page),
    ...listed(
      'On record',
      kept.map(({ text }) => text),
      page,
    ),
  ]
}

/** A step by what it came to or is to come to, without its boxes. */
function whatCame({ title, lines }: Card['steps'][number]): readonly string[] {
  const told = lines.filter(({ ticked }) => ticked === undefined)
  return told.length === 0
    ? [title]
    : told.map(({ text }) => `${title}: ${text.replace(/^done: /u, '')}`)
}

function listed(heading: string, texts: readonly string[], page: Page): readonly string[] {
  if (texts.length === 0) return []
  return [
    '',
    page.ink.heading(heading),
    ...texts.flatMap((text) => hanging(`${' '.repeat(INDENT)}-`, text, INDENT * 2, page.width)),
  ]
}
