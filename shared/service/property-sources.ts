import { keptWith } from '../kept.ts'
import type { Warning } from '../operation.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'
import { substanceData } from '../substance/library.ts'
import { estimatedWarnings, mixingSources } from './mixing-sources.ts'

/**
 * The equations of state that a refrigerant's figures come from, one a substance in it, and of a
 * blend the papers that its mixing parameters come from.
 */
export const propertySources = keptWith(sourcesOf)

function sourcesOf(r: Refrigerant): readonly Source[] {
  const substances = substancesOf(r)
  const equations: readonly Source[] = substances.map((substance) => {
    const { source } = substanceData(substance)
    return {
      id: `equation-${substance.toLowerCase()}`,
      title: `Equation of state of ${substance}: ${source.citation}`,
      mark: 'computed',
      ...(source.doi === undefined ? {} : { url: `https://doi.org/${source.doi}` }),
    }
  })
  return [...equations, ...mixingSources(substances)]
}

/** What to know before trusting a refrigerant's figures: which of its mixing parameters are estimated. */
export const propertyWarnings = keptWith((r: Refrigerant): readonly Warning[] =>
  estimatedWarnings(substancesOf(r)),
)

const substancesOf = (r: Refrigerant) => r.info.composition.map(({ substance }) => substance)
