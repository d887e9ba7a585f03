import * as z from 'zod'
import { type Mark, markOut, type Source } from '../sources.ts'

export const statementOut = z
  .strictObject({
    id: z.string(),
    text: z.string(),
    mark: markOut,
    /** Id in `sources`. */
    source: z.string(),
  })
  .meta({
    id: 'Statement',
    description:
      'A rule or a practice in words, how far it was checked, and the source that stands behind it.',
  })

/** A rule or a practice in words, with the source that stands behind it. */
export interface Statement {
  readonly id: string
  readonly text: string
  readonly mark: Mark
  readonly source: string
}

interface Row {
  readonly text: string
  readonly source: string
}

/**
 * Reads the `statements` block of a data file.
 *
 * What is only remembered says so in its own text, since a statement may be read apart from its source.
 */
export function statementTable<T extends Readonly<Record<string, Row>>>(
  table: T,
  sourceOf: (id: never) => Source,
): (...ids: readonly (keyof T & string)[]) => readonly Statement[] {
  return (...ids) =>
    ids.map((id) => {
      const row = table[id] as Row
      const { mark } = sourceOf(row.source as never)
      const text = mark === 'memory' ? `Unverified, look it up: ${row.text}` : row.text
      return { id, text, mark, source: row.source }
    })
}

/** The sources behind these statements. */
export const statementSources = (
  statements: readonly Statement[],
  sourceOf: (id: never) => Source,
): readonly Source[] => statements.map((entry) => sourceOf(entry.source as never))
