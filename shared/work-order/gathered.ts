import type { Source } from '../sources.ts'
import type { Outcomes } from './run.ts'
import type { Outcome } from './section.ts'
import type { Step } from './step.ts'

const TITLES: Readonly<Record<Exclude<keyof Outcomes, 'rules'>, string>> = {
  readingsBefore: 'Readings before',
  readings: 'Readings',
  diagnosis: 'Diagnosis',
  recovery: 'Recovery',
  charge: 'Charge',
  oil: 'Oil',
  leakTest: 'Leak test',
  evacuation: 'Evacuation',
  charging: 'Charging',
  cooling: 'Cooling check',
}

/** The computations that succeeded, with the title of their step. */
export function computations({ rules, ...others }: Outcomes) {
  const named: (readonly [string, Outcome<unknown>])[] = [
    ...Object.values(rules).map((outcome) => ['Rules', outcome] as const),
    ...(Object.keys(TITLES) as (keyof typeof TITLES)[]).map(
      (key) => [TITLES[key], others[key]] as const,
    ),
  ]
  return named.flatMap(([title, outcome]) =>
    outcome.state === 'done'
      ? [{ title, computation: outcome.computation, where: outcome.where }]
      : [],
  )
}

/** Sources of what stands on the sheet; of the law only the statements that are on it. */
export function shownSources(
  own: readonly Source[],
  done: ReturnType<typeof computations>,
  { rules }: Outcomes,
  steps: readonly Step[],
): readonly Source[] {
  const law = new Set(
    Object.values(rules).flatMap((outcome) =>
      outcome.state === 'done' ? outcome.computation.sources.map(({ id }) => id) : [],
    ),
  )
  const kept = new Set([
    ...steps.flatMap((step) => step.rules.map(({ source }) => source)),
    ...recordIds(rules),
  ])
  return [...own, ...done.flatMap(({ computation }) => computation.sources)].filter(
    ({ id }) => !law.has(id) || kept.has(id),
  )
}

const recordIds = (rules: Outcomes['rules']): string[] =>
  Object.values(rules).flatMap((outcome) => {
    if (outcome.state !== 'done') return []
    const { law, records } = outcome.computation.result
    return records.statements.map(({ id }) => `${law}/${id}`)
  })
