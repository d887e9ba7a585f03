import { valueText } from '../../shared/answer/scalar.ts'
import type { Answer } from '../../shared/operation.ts'
import type { ShownQuantity } from '../../shared/quantity/index.ts'
import type { Page } from './pairs.ts'
import { type SweepRow, sweepLines } from './simulate.ts'
import { treeLines } from './tree.ts'
import { padEnd, padStart, paragraph, widest } from './wrap.ts'

/** Rows of other causes that a screen has room for; the sheet has them all. */
const MOST_OTHERS = 5
const GAP = '  '

type Move = 'up' | 'same' | 'down'
interface Other {
  readonly cause: string
  readonly probability: number
  readonly moves: Readonly<Record<string, Move>>
  readonly reading?: string
  readonly would?: ShownQuantity
  readonly shows?: ShownQuantity
}
interface Lesson {
  readonly stage: 'predict' | 'buy' | 'revealed'
  readonly offers: readonly {
    readonly reading: string
    readonly minutes: ShownQuantity
    readonly shows?: ShownQuantity
    readonly sound?: ShownQuantity
  }[]
  readonly sheet: readonly string[]
  readonly reveal?: {
    readonly others: readonly Other[]
    readonly sweep: { readonly rows: readonly SweepRow[] }
  }
}

const lead = (shown: ShownQuantity | undefined) => {
  if (shown === undefined) return ''
  const { also: _, ...own } = shown
  return valueText(own)
}

/** Columns side by side, a head over them. */
function tableLines(rows: readonly (readonly string[])[], page: Page, right: readonly number[]) {
  const [head = [], ...body] = rows
  const widths = head.map((_, index) => widest(rows.map((row) => row[index] ?? '')))
  const line = (row: readonly string[]) =>
    GAP +
    row
      .map((cell, index) =>
        right.includes(index)
          ? padStart(cell, widths[index] ?? 0)
          : padEnd(cell, widths[index] ?? 0),
      )
      .join(GAP)
      .trimEnd()
  return [page.ink.quiet(line(head)), ...body.map(line)]
}

/** What can be bought, and what those show that are. */
const offerLines = ({ offers }: Lesson, page: Page) =>
  tableLines(
    [
      ['reading', 'costs', 'shows', 'when sound'],
      ...offers.map(({ reading, minutes, shows, sound }) => [
        reading,
        lead(minutes),
        lead(shows),
        lead(sound),
      ]),
    ],
    page,
    [1, 2, 3],
  )

const ARROWS: Readonly<Record<Move, string>> = { up: '+', same: '0', down: '-' }

/** Why not the others: how likely, which way they move the five gauges, and what parts them. */
const otherLines = (others: readonly Other[], page: Page) =>
  tableLines(
    [
      ['why not', 'chance', 'moves', 'parted by', 'it would', 'this'],
      ...others.map(({ cause, probability, moves, reading = 'nothing', would, shows }) => [
        cause,
        `${Math.round(100 * probability)} %`,
        Object.values(moves)
          .map((move) => ARROWS[move])
          .join(''),
        reading,
        lead(would),
        lead(shows),
      ]),
    ],
    page,
    [1, 4, 5],
  )

/** Under the screen: what there is to buy, or why it is no other cause. */
export function screenLesson({ result }: Answer, page: Page): readonly string[] {
  const lesson = result as Lesson
  if (lesson.stage === 'predict') return []
  if (lesson.reveal === undefined) return offerLines(lesson, page)
  return otherLines(lesson.reveal.others.slice(0, MOST_OTHERS), page)
}

/** The sheet for the class, then everything that the answer holds. */
export function lessonLines({ result }: Answer, page: Page): readonly string[] {
  const { sheet, reveal, ...rest } = result as Lesson
  const { sweep, others, ...end } = reveal ?? {}
  return [
    ...sheet.flatMap((line) => ['', ...paragraph(line, 0, page.width)]),
    '',
    ...(others ? [...otherLines(others, page), ''] : []),
    ...treeLines(rest, 2, page),
    ...treeLines(end, 2, page),
    ...(sweep ? ['', ...sweepLines(sweep.rows, page)] : []),
  ]
}
