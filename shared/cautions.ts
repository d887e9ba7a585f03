import * as z from 'zod'
import data from '../data/service/cautions.json' with { type: 'json' }
import { keptBy } from './kept.ts'
import { sourceTable } from './source-table.ts'
import { distinctSources, type Source, source } from './sources.ts'

export const CAUTION_LEVELS = ['danger', 'warning', 'note'] as const
/** A caution's line for the screen has at most this many characters. */
export const SHORT_LENGTH = 70

export const caution = z
  .strictObject({
    id: z.string(),
    level: z.enum(CAUTION_LEVELS),
    short: z.string().max(SHORT_LENGTH).describe('One line, for the screen'),
    text: z.string(),
    sources: z.array(source),
  })
  .meta({ id: 'Caution', description: 'What can hurt somebody, break something or break a rule.' })

/** What can hurt somebody, break something or break a rule. */
export interface Caution {
  readonly id: string
  readonly level: (typeof CAUTION_LEVELS)[number]
  /** One line, for the screen. */
  readonly short: string
  readonly text: string
  readonly sources: readonly Source[]
}

export type CautionId = keyof typeof data.cautions
type SourceId = keyof typeof data.sources

const sourceOf = sourceTable(data.sources)

const cautionOf = keptBy((id: CautionId): Caution => {
  const entry = data.cautions[id]
  return {
    id,
    level: entry.level as Caution['level'],
    short: entry.short,
    text: entry.text,
    sources: entry.sources.map((key) => sourceOf(key as SourceId)),
  }
})

/** The cautions of these names, each once, danger before warning before note. */
export function cautions(ids: readonly CautionId[]): readonly Caution[] {
  // Of one there is no order, and many an answer carries no more.
  if (ids.length < 2) return ids.map(cautionOf)
  const once = [...new Set(ids)].map(cautionOf)
  return CAUTION_LEVELS.flatMap((level) => once.filter((entry) => entry.level === level))
}

/**
 * What stands on every screen and card: what can hurt or break a rule. First aid is for afterwards and
 * stands on the sheet, notes too.
 */
export const isOnScreen = ({ id, level }: Caution): boolean =>
  level !== 'note' && !id.startsWith('first-aid')

/** Sources that stand behind these cautions. */
export const cautionSources = (list: readonly Caution[]): readonly Source[] =>
  distinctSources(list.flatMap((entry) => entry.sources))
