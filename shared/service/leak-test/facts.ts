import data from '../../../data/service/leak-test.json' with { type: 'json' }
import { sourceTable } from '../../source-table.ts'
import { statementTable } from '../statement.ts'

/** Published facts about leak tests. */
export const leakFacts = data
export const leakSource = sourceTable(data.sources)
export const leakStatements = statementTable(data.statements, leakSource)
