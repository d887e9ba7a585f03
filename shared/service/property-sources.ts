import type { Warning } from '../operation.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'
import { substanceData } from '../substance/library.ts'
import { estimatedWarnings, mixingSources } from './mixing-sources.ts'

/**
 * The equations of state that a refrigerant's figures come from, one a substance in it, and of a
 * blend the papers that its mixing parameters come from.
 */
export function propertySources(r: Refrigerant): readonly Source[] {
  const before = made.get(r)
  if (before) return before
  const sources = sourcesOf(r)
  made.set(r, sources)
  return sources
}

const made = new WeakMap<Refrigerant, readonly Source[]>()

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
export function propertyWarnings(r: Refrigerant): readonly Warning[] {
  return estimatedWarnings(substancesOf(r))
}

const substancesOf = (r: Refrigerant) => r.info.composition.map(({ substance }) => substance)
