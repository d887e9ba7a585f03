import { type Caution, cautionSources } from '../../shared/cautions.ts'
import type { Answer } from '../../shared/operation.ts'
import { distinctSources, MARKS, type Mark, type Source } from '../../shared/sources.ts'
import type { Page } from './pairs.ts'
import { hanging, paragraph } from './wrap.ts'

const INDENT = 2
const LEVEL_COLUMNS = 9
const MARK_COLUMNS = 17

/** Cautions as "DANGER   text", the word carrying the level also without colour. */
export function cautionLines(list: readonly Caution[], page: Page): readonly string[] {
  return list.flatMap(({ level, text }) => {
    const word = page.ink.level[level](level.toUpperCase())
    return hanging(word, text, LEVEL_COLUMNS, page.width)
  })
}

export function warningLines(list: Answer['warnings'], page: Page): readonly string[] {
  const word = page.ink.level.warning('CHECK')
  return list.flatMap(({ message }) => hanging(word, message, LEVEL_COLUMNS, page.width))
}

export function assumptionLines(list: Answer['assumptions'], page: Page): readonly string[] {
  const texts = list.map(({ field, taken, because }) => `${field}: ${taken}, because ${because}`)
  return bulletLines('Assumed', texts, page)
}

/** Texts as a list under a heading; nothing where there are none. */
export function bulletLines(
  heading: string,
  texts: readonly string[],
  page: Page,
): readonly string[] {
  if (texts.length === 0) return []
  return [page.ink.heading(heading), ...texts.flatMap((text) => bulleted(text, page))]
}

/** Sources of the figures and of the cautions, each once, with how far they were checked; `full` adds addresses, notes and dates. */
export function sourceLines(answer: Answer, page: Page, full: boolean): readonly string[] {
  const list = distinctSources([...answer.sources, ...cautionSources(answer.cautions)])
  if (list.length === 0) return []
  const entries = list.map((entry) => ({ mark: markText(entry.mark), text: citation(entry, full) }))
  const once = new Map(entries.map((entry) => [`${entry.mark} ${entry.text}`, entry]))
  const lines = [...once.values()].flatMap(({ mark, text }) =>
    hanging(' '.repeat(INDENT) + page.ink.quiet(mark), text, INDENT + MARK_COLUMNS, page.width),
  )
  const marks = [...new Set(list.map(({ mark }) => mark))].filter((mark) => mark !== 'verified')
  const legend = marks.flatMap((mark) =>
    paragraph(page.ink.quiet(`${markText(mark)}: ${MARKS[mark]}`), INDENT, page.width),
  )
  const heading = page.ink.heading('Sources')
  const more = full ? '' : page.ink.quiet(' (--sources for addresses, dates and notes)')
  return [heading + more, ...lines, ...legend]
}

const markText = (mark: Mark) => mark.replace('-', ' ')

/** A source in one line with its mark, which goes without saying where the text was read. */
export const cited = (source: Source, full: boolean): string =>
  source.mark === 'verified'
    ? citation(source, full)
    : `${citation(source, full)} (${markText(source.mark)})`

function citation({ title, where, url, checked, note }: Source, full: boolean): string {
  const more = full ? [note, checked === undefined ? undefined : `checked ${checked}`, url] : []
  const parts = [title, where, ...more]
  return parts.filter((part) => part !== undefined && part !== '').join('; ')
}

const bulleted = (text: string, page: Page) =>
  hanging(`${' '.repeat(INDENT)}-`, text, INDENT * 2, page.width)
