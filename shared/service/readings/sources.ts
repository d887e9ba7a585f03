import data from '../../../data/service/reading-sources.json' with { type: 'json' }
import { sourceTable } from '../../source-table.ts'

export type ReadingSourceId = keyof typeof data.sources

/** Sources behind targets, bands and findings, by id. */
export const readingSource = sourceTable(data.sources)
