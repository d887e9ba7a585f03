import { type Block, heading, type Item, list, texts } from '../blocks.ts'
import type { WorkOrderAnswer } from '../sheet.ts'

type Line = WorkOrderAnswer['result']['card']['records'][number]

/** The card as blocks, for doors that lay pages out themselves. */
export function cardPage({ result, law }: WorkOrderAnswer): readonly Block[] {
  const { card, invented } = result
  return [
    { kind: 'title', text: `Work order: ${card.title}` },
    ...card.stops.map((text): Block => ({ kind: 'note', text: stopText(text) })),
    ...(invented ? [{ kind: 'note', text: DEMONSTRATION } as const] : []),
    texts([card.machine, ...card.about]),
    heading('Danger'),
    texts([...card.dangers, ...(law === undefined ? [] : [`Law ${law}`])]),
    ...card.steps.flatMap(({ title, lines }, index) => [
      heading(`${index + 1} ${title}`),
      list(lines.map(itemOf)),
    ]),
    heading('Records'),
    list(card.records.map(itemOf)),
    texts([card.foot]),
  ]
}

const DEMONSTRATION = 'Demonstration: the machine is invented and nothing here was measured.'

/** The word that stands before whatever forbids the work. */
export const stopText = (text: string) => (text.startsWith('STOP') ? text : `STOP: ${text}`)

const itemOf = (line: Line): Item => ({ text: lineText(line), ticked: line.ticked })

/** A line without its box; ways of which one is taken follow each other. */
export const lineText = ({ text, oneOf }: Line): string =>
  oneOf ? [`${text}:`, ...oneOf.map((way) => `( ) ${way}`)].join('  ') : text
