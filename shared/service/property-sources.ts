import type { Refrigerant } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'
import { substanceData } from '../substance/library.ts'
import { mixingSources } from './mixing-sources.ts'

/**
 * The equations of state that a refrigerant's figures come from, one a substance in it, and of a
 * blend the papers that its mixing parameters come from.
 */
export function propertySources(r: Refrigerant): readonly Source[] {
  const substances = r.info.composition.map((c) => c.substance)
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
