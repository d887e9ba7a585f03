import * as z from 'zod'

/** How far a statement can be trusted. */
export const MARKS = {
  verified: 'the text of the source was read',
  secondary: 'read in a secondary description of the source',
  inferred: 'our own reading of a text that does not say so itself',
  memory: 'from memory, not checked: look it up before relying on it',
  'common-practice': 'common practice in the trade, no primary source',
  computed: 'computed here from published equations',
} as const

export type Mark = keyof typeof MARKS

/** Schema of a mark. */
export const markOut = z.enum(Object.keys(MARKS) as [Mark, ...Mark[]])

export const source = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    mark: markOut,
    url: z.string().optional(),
    /** Section, table, page or equation. */
    where: z.string().optional(),
    /** Date on which it was checked, YYYY-MM-DD. */
    checked: z.string().optional(),
    note: z.string().optional(),
  })
  .meta({
    id: 'Source',
    description: 'Where a figure or a statement comes from, and how far it was checked.',
  })

/** Where a figure or a statement comes from. */
export interface Source {
  readonly id: string
  readonly title: string
  readonly mark: Mark
  readonly url?: string | undefined
  readonly where?: string | undefined
  readonly checked?: string | undefined
  readonly note?: string | undefined
}

/** Each source once, by id, in order of first mention. */
export function distinctSources(sources: readonly Source[]): readonly Source[] {
  // Nearly always each mention is the same object; what is told twice in different words needs the index.
  const once = [...new Set(sources)]
  const ids = new Set(once.map(({ id }) => id))
  if (ids.size === once.length) return once
  return [...new Map(sources.map((entry) => [entry.id, entry])).values()]
}
