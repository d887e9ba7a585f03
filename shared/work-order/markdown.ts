import type { Block, Item } from './blocks.ts'
import { cardPage } from './card/page.ts'
import { customerPage } from './customer-page.ts'
import { sheet, type WorkOrderAnswer } from './sheet.ts'

/** The card and its appendix as Markdown, to print or to file. What users wrote cannot change its layout. */
export const workOrderMarkdown = (answer: WorkOrderAnswer): string =>
  written([...cardPage(answer), ...sheet(answer)])

/** The customer's copy as Markdown. */
export const customerMarkdown = (answer: WorkOrderAnswer): string => written(customerPage(answer))

const written = (blocks: readonly Block[]) => `${blocks.map(block).join('\n\n')}\n`

function block(entry: Block): string {
  switch (entry.kind) {
    case 'title':
      return `# ${plain(entry.text)}`
    case 'heading':
      return `## ${plain(entry.text)}`
    case 'note':
      return `> ${plain(entry.text)}`
    case 'pairs':
      return [
        '| | |',
        '| --- | --- |',
        ...entry.rows.map(([label, value]) => `| ${plain(label)} | ${plain(value)} |`),
      ].join('\n')
    case 'list':
      return [
        ...(entry.name === undefined ? [] : [`**${plain(entry.name)}**`, '']),
        ...entry.items.map(item),
      ].join('\n')
  }
}

const item = ({ text, ticked, source, number }: Item) => {
  const box = ticked === undefined ? '' : ticked ? '[x] ' : '[ ] '
  const lead = number === undefined ? '' : `[${number}] `
  return `- ${box}${lead}${start(plain(text))}${source === undefined ? '' : ` [${source}]`}`
}

/** A number or a dash at the start of an item would begin a list inside it. */
const start = (text: string) =>
  text.replace(/^(\d+)([.)])(?=\s)/u, '$1\\$2').replace(/^([-+=])(?=\s)/u, '\\$1')

/** One line, with every sign escaped that Markdown or HTML would read as layout. */
const plain = (text: string) =>
  text
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/[\\`*_{}[\]<>#|~!]/gu, '\\$&')
    .replace(/&/gu, '&amp;')
