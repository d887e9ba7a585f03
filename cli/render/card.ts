import type { WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { Page } from './pairs.ts'
import { DANGER_ON_SCREEN } from './screen.ts'
import { columnsOf, hanging, paragraph, widest } from './wrap.ts'

const APART = '   '
const GAP = 2

type Card = WorkOrderAnswer['result']['card']
type Line = Card['records'][number]

/** The visit on one card, to be stapled to the job: stop-lines, machine, steps with boxes and blanks, records. */
export function cardLines(answer: WorkOrderAnswer, page: Page): readonly string[] {
  const { result, cautions } = answer
  const { card, invented } = result
  const heads = card.steps.map(({ title }, index) => `${index + 1} ${title}`)
  const indent = widest([...heads, 'Records']) + GAP
  const dangers = cautions.filter(DANGER_ON_SCREEN).map(({ short }) => short)
  return [
    ...card.stops.flatMap((text) =>
      paragraph(text.startsWith('STOP') ? text : `STOP: ${text}`, 0, page.width).map(
        page.ink.error,
      ),
    ),
    ...paragraph(page.ink.title(`WORK ORDER  ${card.title}`), 0, page.width),
    ...paragraph(card.machine, 0, page.width),
    ...card.about.flatMap((text) => paragraph(text, 0, page.width)),
    ...(invented ? paragraph('Demonstration: invented, nothing was measured', 0, page.width) : []),
    ...hanging(page.ink.level.danger('Danger'), dangers.join(' · '), 8, page.width),
    '',
    ...card.steps.flatMap(({ title, lines, done }, index) =>
      flowed(heads[index] ?? title, done ? short(lines) : lines, indent, page),
    ),
    ...flowed('Records', card.records, indent, page),
  ]
}

/** A finished step in its figures alone. */
const short = (lines: readonly Line[]) => {
  const told = lines.filter(({ ticked }) => ticked === undefined)
  const done = lines.filter(({ ticked }) => ticked === true)
  return told.length > 0 ? told : done
}

const textOf = ({ text, ticked }: Line) =>
  ticked === undefined ? text : `${ticked ? '[x]' : '[ ]'} ${text}`

/** Items one after the other, as many to a line as fit; a long one gets lines of its own. */
function flowed(
  head: string,
  lines: readonly Line[],
  indent: number,
  page: Page,
): readonly string[] {
  const room = page.width - indent
  const rows: string[] = []
  let current = ''
  for (const item of lines.map(textOf)) {
    const longer = current === '' ? item : current + APART + item
    if (columnsOf(longer) <= room) {
      current = longer
    } else {
      if (current !== '') rows.push(current)
      current = item
    }
  }
  if (current !== '') rows.push(current)
  const title = page.ink.heading(head)
  return rows.flatMap((row, index) => hanging(index === 0 ? title : '', row, indent, page.width))
}
