import { keptBy } from './kept.ts'
import type { Mark, Source } from './sources.ts'

interface SourceRow {
  readonly title: string
  readonly mark: string
  readonly url?: string
  readonly where?: string
  readonly checked?: string
  readonly note?: string
}

/** Reads the `sources` block of a data file: `sourceOf('cfr-82-156')`. */
export function sourceTable<T extends Readonly<Record<string, SourceRow>>>(
  table: T,
): (id: keyof T & string) => Source {
  return keptBy((id) => {
    const row = table[id] as SourceRow
    return { id, ...row, mark: row.mark as Mark }
  })
}
