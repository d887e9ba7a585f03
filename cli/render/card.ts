import { lineText, stopText } from '../../shared/work-order/card/page.ts'
import type { WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { Page } from './pairs.ts'
import { columnsOf, hanging, paragraph, widest } from './wrap.ts'

const APART = '   '
const GAP = 2
/** Stop-lines, dangers and the law stand under each other. */
const HEAD_COLUMNS = 8

/** A blank at which no line is broken: a box stays whole, and with its first word. */
const KEPT_BLANK = '\u00A0'
const EMPTY_BOX = `[${KEPT_BLANK}]`

type Card = WorkOrderAnswer['result']['card']
type Line = Card['records'][number]

/** A card is one sheet of paper. */
export const MOST_LINES = 70

/**
 * The visit on one card, to be stapled to the job: stop-lines, machine, steps with boxes and blanks,
 * records. Where it would not fit on one sheet, tasks follow each other without a new line for each, and
 * of what a step found only its first sentence is left: the appendix has it in whole.
 */
export function cardLines(answer: WorkOrderAnswer, page: Page): readonly string[] {
  const [first, ...others] = [flowed, packed, tight].map(
    (layout) => () => laidOut(answer, page, layout),
  )
  const lines = others.reduce(
    (laid, next) => (laid.length <= MOST_LINES ? laid : next()),
    first?.() ?? [],
  )
  return lines.map((line) => line.replaceAll(KEPT_BLANK, ' '))
}

type Layout = (
  head: string,
  lines: readonly Line[],
  indent: number,
  page: Page,
) => readonly string[]

function laidOut({ result, law }: WorkOrderAnswer, page: Page, layout: Layout): readonly string[] {
  const { card, invented } = result
  const { ink, width } = page
  const heads = card.steps.map(({ title }, index) => `${index + 1} ${title}`)
  const indent = widest([...heads, 'Records']) + GAP
  return [
    ...card.stops.flatMap((text) => paragraph(stopText(text), 0, width).map(ink.error)),
    ...paragraph(ink.title(`WORK ORDER  ${card.title}`), 0, width),
    ...paragraph(card.machine, 0, width),
    ...card.about.flatMap((text) => paragraph(text, 0, width)),
    ...(invented ? paragraph('Demonstration: invented, nothing was measured', 0, width) : []),
    ...hanging(ink.level.danger('Danger'), card.dangers.join(' · '), HEAD_COLUMNS, width),
    ...(law === undefined ? [] : hanging(ink.heading('Law'), law, HEAD_COLUMNS, width)),
    '',
    ...card.steps.flatMap(({ lines }, index) => layout(heads[index] ?? '', lines, indent, page)),
    ...layout('Records', card.records, indent, page),
    ink.quiet(card.foot),
  ]
}

const textOf = (line: Line): string =>
  line.ticked === undefined
    ? lineText(line)
    : `${line.ticked ? '[x]' : EMPTY_BOX}${KEPT_BLANK}${lineText(line)}`

/** Items one after the other, as many to a line as fit; a long one gets lines of its own. */
const flowed: Layout = (head, lines, indent, page) => {
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

/** Items one after the other, broken wherever a line ends. */
const packed: Layout = (head, lines, indent, page) =>
  hanging(page.ink.heading(head), lines.map(textOf).join(APART), indent, page.width)

/** The same, with the first sentence of what is no task. */
const tight: Layout = (head, lines, indent, page) =>
  packed(
    head,
    lines.map((line) =>
      line.ticked === undefined && !line.oneOf ? { ...line, text: firstSentence(line.text) } : line,
    ),
    indent,
    page,
  )

const firstSentence = (text: Line['text']) =>
  (/^.*?\.(?=\s|$)/su.exec(text)?.[0] ?? text) as Line['text']
