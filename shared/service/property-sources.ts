import type { Refrigerant } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'
import { substanceData } from '../substance/library.ts'

/** The equations of state that a refrigerant's figures come from, one a substance in it. */
export function propertySources(r: Refrigerant): readonly Source[] {
  return r.info.composition.map(({ substance }) => {
    const { source } = substanceData(substance)
    return {
      id: `equation-${substance.toLowerCase()}`,
      title: `Equation of state of ${substance}: ${source.citation}`,
      mark: 'computed',
      ...(source.doi === undefined ? {} : { url: `https://doi.org/${source.doi}` }),
    }
  })
}
