import type { Answer } from '../../shared/operation.ts'
import type { Block, Item } from '../../shared/work-order/blocks.ts'
import { customerPage } from '../../shared/work-order/customer-page.ts'
import { sheet, type WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { AnswerPage } from './answer.ts'
import { cardLines } from './card.ts'
import { cited } from './notes.ts'
import { type Page, pairLines } from './pairs.ts'
import { hanging, paragraph } from './wrap.ts'

const BOX_COLUMNS = 4
const MORE = '--full for rules, steps and sources in full'

/** The card; with `--full` the whole sheet behind it. */
export function workOrderLines(answer: Answer, page: AnswerPage): readonly string[] {
  const order = answer as WorkOrderAnswer
  if (page.customer) return apart(customerPage(order).map((block) => blockLines(block, page)))
  const card = cardLines(order, page)
  if (!page.full) return [...card, '', ...paragraph(page.ink.quiet(MORE), 0, page.width)]
  const parts = sheet(order).map((block) =>
    blockLines(page.sources ? block : withShortSources(block, order), page),
  )
  return [...card, '', ...apart(parts)]
}

const apart = (parts: readonly (readonly string[])[]): readonly string[] =>
  parts.flatMap((lines, index) => (index === 0 ? lines : ['', ...lines]))

function withShortSources(block: Block, { sources }: WorkOrderAnswer): Block {
  if (block.kind === 'heading' && block.text === 'Sources') {
    return { ...block, text: 'Sources (--sources for addresses, dates and notes)' }
  }
  if (block.kind !== 'list') return block
  const items = block.items.map((item) => {
    const source = item.number === undefined ? undefined : sources[item.number - 1]
    return source ? { ...item, text: cited(source, false) } : item
  })
  return { ...block, items }
}

function blockLines(block: Block, page: Page): readonly string[] {
  switch (block.kind) {
    case 'title':
      return paragraph(page.ink.title(block.text), 0, page.width)
    case 'heading':
      return paragraph(page.ink.heading(block.text), 0, page.width)
    case 'note':
      return paragraph(page.ink.level.warning(block.text), 0, page.width)
    case 'pairs':
      return pairLines(
        block.rows.map(([label, value]) => ({ label, value })),
        2,
        page,
      )
    case 'list': {
      const items = block.items.flatMap((item) => itemLines(item, page))
      return block.name === undefined ? items : [`  ${block.name}`, ...items]
    }
  }
}

function itemLines({ text, ticked, source, number }: Item, page: Page): readonly string[] {
  const box = ticked === undefined ? '-' : ticked ? '[x]' : '[ ]'
  const head = number === undefined ? box : `[${number}]`
  const indent =
    2 + Math.max(number === undefined && ticked === undefined ? 2 : BOX_COLUMNS, head.length + 1)
  const behind = source === undefined ? '' : ` ${page.ink.quiet(`[${source}]`)}`
  return hanging(`  ${head}`, text + behind, indent, page.width)
}
