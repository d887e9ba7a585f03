import data from '../../../data/service/leak-test.json' with { type: 'json' }
import { statementSource } from '../../rules/decide.ts'
import { JURISDICTIONS } from '../../rules/library.ts'
import { sourceTable } from '../../source-table.ts'
import type { Source } from '../../sources.ts'
import { type Statement, statementTable } from '../statement.ts'

/** Published facts about leak tests, and what the step says. */
export const leakFacts = data
export const leakSource = sourceTable(data.sources)
export const leakStatements = statementTable(data.statements, leakSource)

const LAW = 'us-federal'

/** Statements of the law room, as this step gives them. */
export function lawStatements(ids: readonly string[]): readonly Statement[] {
  return ids.flatMap((id) => {
    const row = JURISDICTIONS[LAW].statements[id]
    return row === undefined ? [] : [{ id, text: row.text, mark: row.mark, source: `${LAW}/${id}` }]
  })
}

/** What stands behind them, with section and date of check. */
export function lawSources(ids: readonly string[]): readonly Source[] {
  const law = JURISDICTIONS[LAW]
  return ids.flatMap((id) => {
    const row = law.statements[id]
    if (row === undefined) return []
    const source = law.sources[row.source]
    return [
      statementSource(LAW, {
        ...row,
        id,
        source: source?.title ?? row.source,
        url: source?.url,
        applies: 'yes',
        dependsOn: [],
      }),
    ]
  })
}
