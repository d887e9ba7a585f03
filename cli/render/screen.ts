import type { ShownTold } from '../../shared/answer/told.ts'
import { capital } from '../../shared/answer/words.ts'
import type { Answer } from '../../shared/operation.ts'
import { dangerText } from './dangers.ts'
import type { Page } from './pairs.ts'
import { columnsOf, hanging, padEnd, paragraph, widest } from './wrap.ts'

const GAP = 2
/** Columns of a figure that is a number or a few words; longer ones are sentences. */
const LONGEST_FIGURE = 26
/** Lines of a terminal as it opens, less the one for the next command. */
const SCREEN_LINES = 23
/** Warnings that a screen shows; the sheet has them all. */
const MOST_WARNINGS = 3

/** An answer whose operation tells it in words. */
export type ToldAnswer = Answer & ShownTold

export const isTold = (answer: Answer): answer is ToldAnswer => answer.headline !== undefined

/**
 * An answer on one screen: what it is and what to do, the figures, what next, what is dangerous,
 * what was assumed. Everything else stands on the sheet.
 *
 * @param whole - On the sheet itself: long meanings too, and no word of where the rest is.
 */
export function screenLines(
  answer: ToldAnswer,
  page: Page,
  whole: boolean = false,
): readonly string[] {
  const heading = headlineLines(answer, page)
  const notes = [
    ...warningLines(answer, page),
    ...dangerLines(answer, page),
    ...lawLines(answer, page),
    ...assumedLines(answer, page, whole),
  ]
  if (answer.line) return [...heading, ...notes]
  const figures = figureLines(answer, page, whole)
  const rest = [...nextLines(answer, page), ...notes]
  const blocks = [heading, figures, rest].filter((lines) => lines.length > 0)
  const lines = blocks.flatMap((block, index) => (index === 0 ? block : ['', ...block]))
  // What is dangerous may take long to say: then the air between the blocks goes, and no word.
  return whole || lines.length <= SCREEN_LINES ? lines : blocks.flat()
}

/** A stop is the first word of the first line, in colour and without. */
function headlineLines({ level, headline }: ToldAnswer, page: Page): readonly string[] {
  if (level !== 'stop') return paragraph(page.ink.title(headline), 0, page.width)
  const text = headline.startsWith('STOP') ? headline : `STOP: ${headline}`
  return paragraph(text, 0, page.width).map(page.ink.error)
}

function figureLines({ figures }: ToldAnswer, page: Page, whole: boolean): readonly string[] {
  const labels = widest(figures.map(({ label }) => label)) + GAP
  const short = figures.filter(({ text }) => columnsOf(text) <= LONGEST_FIGURE)
  const texts = widest(short.map(({ text }) => text))
  const start = 2 + labels + texts + GAP
  return figures.flatMap((figure) => {
    const { label, text } = figure
    const meaning = meaningOf(figure, whole)
    const name = `  ${capital(label)}`
    // A sentence instead of a number stands beside its label, its meaning under it.
    if (!short.includes(figure)) {
      return [
        ...hanging(name, text, 2 + labels, page.width),
        ...(meaning === '' ? [] : paragraph(meaning, 2 + labels, page.width)),
      ]
    }
    const shown = padEnd(name, 2 + labels) + page.ink.figure(text)
    if (meaning === '') return [shown]
    // On a narrow terminal the meaning stands under its figure.
    if (start > page.width / 2) return [shown, ...paragraph(meaning, 4, page.width)]
    return hanging(shown, meaning, start, page.width)
  })
}

/** Letters of a meaning that a screen has room for; a longer one, such as a rule in whole, is for the sheet. */
const LONGEST_MEANING = 90

/** What a figure means, and what it rests on where that is less than published or computed. */
const meaningOf = ({ says = '', basis }: ToldAnswer['figures'][number], whole: boolean) =>
  [
    ...(says !== '' && (whole || says.length <= LONGEST_MEANING) ? [says] : []),
    ...(basis === undefined ? [] : [`(${basis})`]),
  ].join(' ')

function nextLines({ next }: ToldAnswer, page: Page): readonly string[] {
  const [first, ...others] = next
  if (first === undefined) return []
  if (others.length === 0) return noted('Next', capital(first), page)
  return next.flatMap((text, index) => {
    const word = index === 0 ? page.ink.heading('Next') : ''
    const head = `${padEnd(word, NOTE_COLUMNS)}${index + 1}`
    return hanging(head, capital(text), NOTE_COLUMNS + 3, page.width)
  })
}

/** The dangers in short, one after the other: they are never left to the sheet. */
function dangerLines({ cautions }: ToldAnswer, page: Page): readonly string[] {
  const text = dangerText(cautions)
  return text === '' ? [] : noted('Danger', text, page, page.ink.level.danger)
}

function warningLines({ warnings }: ToldAnswer, page: Page): readonly string[] {
  const shown = warnings.slice(0, MOST_WARNINGS)
  const left = warnings.length - shown.length
  return [
    ...shown.flatMap(({ message }) =>
      noted('Check', firstSentence(message), page, page.ink.level.warning),
    ),
    ...(left > 0 ? noted('', `and ${left} more: --full`, page) : []),
  ]
}

const lawLines = ({ law }: ToldAnswer, page: Page): readonly string[] =>
  law === undefined ? [] : noted('Law', law, page)

/** What was assumed; and, under more than one line, where the rest is. */
function assumedLines(
  { assumptions, line }: ToldAnswer,
  page: Page,
  whole: boolean,
): readonly string[] {
  const texts = [...new Set(assumptions.map(({ short, taken }) => short ?? taken))]
  const assumed =
    texts.length === 0 ? [] : noted('Assumed', texts.join(' · '), page, page.ink.quiet)
  if (whole || line) return assumed
  const more = page.ink.quiet(MORE)
  const last = assumed.at(-1)
  // On the last line where there is room, so that it costs none.
  return last !== undefined && columnsOf(last) + MORE.length + 3 <= page.width
    ? [...assumed.slice(0, -1), `${last}   ${more}`]
    : [...assumed, more]
}

const MORE = '--full for steps and sources'

const NOTE_COLUMNS = 9

const noted = (
  word: string,
  text: string,
  page: Page,
  paint: (text: string) => string = page.ink.heading,
) => hanging(word === '' ? '' : paint(word), text, NOTE_COLUMNS, page.width)

/** A point inside a figure ends no sentence. */
const firstSentence = (text: string) =>
  /^.*?[.:;](?=\s|$)/su.exec(text)?.[0]?.replace(/[:;]$/u, '.') ?? text

/** Columns of the widest line, for those who must fit it somewhere. */
export const widthOf = (lines: readonly string[]) => Math.max(0, ...lines.map(columnsOf))
