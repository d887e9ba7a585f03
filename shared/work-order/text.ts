import { type Block, type Item, sheet, type WorkOrderAnswer } from './sheet.ts'

/** A line of the sheet; `rank` lets a terminal bring out titles. Not wrapped: that is the door's work. */
export interface TextLine {
  readonly text: string
  readonly rank: 'title' | 'heading' | 'body'
  /** Columns by which wrapped lines hang. */
  readonly hang: number
}

/** The sheet as plain lines. */
export function workOrderLines(answer: WorkOrderAnswer): readonly TextLine[] {
  return sheet(answer).flatMap((entry, index) => [
    ...(index === 0 ? [] : [line('')]),
    ...lines(entry),
  ])
}

const line = (text: string, rank: TextLine['rank'] = 'body', hang = 0): TextLine => ({
  text: text.replace(/\s+$/u, ''),
  rank,
  hang,
})

function lines(entry: Block): TextLine[] {
  switch (entry.kind) {
    case 'title':
      return [line(one(entry.text), 'title')]
    case 'heading':
      return [line(one(entry.text), 'heading')]
    case 'note':
      return [line(one(entry.text))]
    case 'pairs': {
      const width = Math.max(...entry.rows.map(([label]) => one(label).length)) + 2
      return entry.rows.map(([label, value]) =>
        line(one(label).padEnd(width) + one(value), 'body', width),
      )
    }
    case 'list':
      return [
        ...(entry.name === undefined ? [] : [line(`${one(entry.name)}:`)]),
        ...entry.items.map(item),
      ]
  }
}

const item = ({ text, ticked, source, number }: Item) => {
  const lead =
    number !== undefined ? `[${number}] ` : ticked === undefined ? '- ' : ticked ? '[x] ' : '[ ] '
  const tail = source === undefined ? '' : ` [${source}]`
  return line(`${lead}${one(text)}${tail}`, 'body', lead.length)
}

const one = (text: string) => text.replace(/\s+/gu, ' ').trim()
