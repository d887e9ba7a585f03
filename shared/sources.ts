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

/** Each source once, by id, in order of first mention; told twice in different words, as told last. */
export function distinctSources(sources: readonly Source[]): readonly Source[] {
  if (sources.length > FEW) return [...new Map(sources.map((entry) => [entry.id, entry])).values()]
  const once: Source[] = []
  for (const entry of sources) {
    const at = once.includes(entry) ? -1 : once.findIndex(({ id }) => id === entry.id)
    if (at >= 0) once[at] = entry
    else if (!once.includes(entry)) once.push(entry)
  }
  return once
}

/** So many are looked through in less time than an index of them takes. */
const FEW = 24
