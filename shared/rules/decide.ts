import type { Law } from '../fields/place.ts'
import type { Source } from '../sources.ts'
import { type CertificateAnswer, certificateAnswer } from './certificate.ts'
import type { Facts } from './facts.ts'
import { JURISDICTIONS } from './library.ts'
import { allMatches, firstMatch, type Match, type Regimes } from './match.ts'
import type { Jurisdiction, StatementData, Topic } from './types.ts'

/** A statement of law that applies, or would if a missing fact said so. */
export interface Statement extends Omit<StatementData, 'source'> {
  readonly id: string
  readonly source: string
  /** Which text was read, where it is not the one in force: "2015 edition". */
  readonly edition?: string | undefined
  readonly url?: string | undefined
  readonly applies: 'yes' | 'depends'
  /** Input fields that would settle whether it applies. */
  readonly dependsOn: readonly string[]
}

interface TopicAnswer {
  /** The one answer, several when facts are missing, none when the tables hold statements only. */
  readonly answers: readonly string[]
  readonly statements: readonly Statement[]
}

export interface Decision {
  readonly law: Law
  readonly lawName: string
  readonly regime: {
    readonly ids: readonly string[]
    readonly names: readonly string[]
    readonly missing: readonly string[]
    readonly statements: readonly Statement[]
  }
  readonly certificate: CertificateAnswer & { readonly statements: readonly Statement[] }
  readonly venting: TopicAnswer
  /** Whether this refrigerant may be in this machine at all. */
  readonly use: TopicAnswer
  readonly equipment: TopicAnswer
  readonly reuse: TopicAnswer
  readonly leakRepair: TopicAnswer
  readonly retrofit: TopicAnswer
  readonly records: TopicAnswer
  readonly elsewhere: TopicAnswer
}

/**
 * Which rules bind a job: reads the jurisdiction's decision tables row by row.
 *
 * Pure and complete: a fact that was not given leaves every row that it could select, each marked
 * with what would settle it, instead of being guessed.
 *
 * @param held - Certificates of the person; undefined when nobody said.
 */
export function decide(law: Law, facts: Facts, held: readonly string[] | undefined): Decision {
  const jurisdiction = JURISDICTIONS[law]
  const regimeRows = firstMatch(jurisdiction.tables.regime, facts)
  const ids = distinct(regimeRows.map(({ row }) => row.answer ?? ''))
  const missing = ids.length > 1 ? distinct(regimeRows.flatMap((match) => match.missing)) : []
  const regimes: Regimes = { ids, missing }
  const certificateRows = firstMatch(jurisdiction.tables.certificate, facts, regimes)
  const topic = (name: Topic, pick: typeof firstMatch): TopicAnswer => {
    const matches = pick(jurisdiction.tables[name], facts, regimes)
    return {
      answers: distinct(matches.flatMap(({ row }) => row.answer ?? [])),
      statements: statementsOf(jurisdiction, matches),
    }
  }
  return {
    law,
    lawName: jurisdiction.name,
    regime: {
      ids,
      names: ids.map((id) => jurisdiction.regimes[id] ?? id),
      missing,
      statements: statementsOf(jurisdiction, regimeRows),
    },
    certificate: {
      ...certificateAnswer(certificateRows, held),
      statements: statementsOf(jurisdiction, certificateRows),
    },
    venting: topic('venting', firstMatch),
    use: topic('use', firstMatch),
    equipment: topic('equipment', allMatches),
    reuse: topic('reuse', allMatches),
    leakRepair: topic('leakRepair', allMatches),
    retrofit:
      facts.action === 'retrofit' ? topic('retrofit', firstMatch) : { answers: [], statements: [] },
    records: topic('records', allMatches),
    elsewhere: topic('elsewhere', allMatches),
  }
}

/** Each statement once: what surely applies before what depends, else in the order of the rows. */
function statementsOf(law: Jurisdiction, matches: readonly Match[]): readonly Statement[] {
  const found = new Map<string, Statement>()
  for (const { row, applies, missing } of matches) {
    for (const id of row.statements) {
      const data = law.statements[id]
      if (!data || found.get(id)?.applies === 'yes') continue
      const dependsOn = distinct([...(found.get(id)?.dependsOn ?? []), ...missing])
      const source = law.sources[data.source]
      found.set(id, {
        ...data,
        id,
        source: source?.title ?? data.source,
        ...(source?.edition === undefined ? {} : { edition: source.edition }),
        ...(source?.url === undefined ? {} : { url: source.url }),
        applies,
        dependsOn: applies === 'yes' ? [] : dependsOn,
      })
    }
  }
  return [...found.values()]
}

/** "40 CFR 82.161(a)(5), 2015 edition; checked 2026-11-27": where a statement stands, which text, when read. */
export const citation = (statement: Pick<Statement, 'section' | 'edition' | 'checked'>) =>
  `${placeOf(statement)}; ${statement.checked === undefined ? 'not checked' : `checked ${statement.checked}`}`

const placeOf = ({ section, edition }: Pick<Statement, 'section' | 'edition'>) =>
  edition === undefined ? section : `${section}, ${edition}`

/** A statement as the frame cites it. */
export const statementSource = (law: Law, statement: Statement): Source => ({
  id: `${law}/${statement.id}`,
  title: statement.source,
  mark: statement.mark,
  ...(statement.url === undefined ? {} : { url: statement.url }),
  where: placeOf(statement),
  ...(statement.checked === undefined ? {} : { checked: statement.checked }),
})

const distinct = <T>(items: readonly T[]): readonly T[] => [...new Set(items)]
