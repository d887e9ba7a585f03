import type { Warning } from '../operation.ts'
import { temperatureDifference } from '../quantity/index.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import { ESTIMATED_K, pairsOf } from '../refrigerant/property-uncertainty.ts'
import type { Source } from '../sources.ts'
import type { MixingRule } from '../substance/mixing-rules.ts'

/** Where the figures of a mixture of these substances come from, beside each one's own equation. */
export function mixingSources(substances: readonly string[]): readonly Source[] {
  const papers = new Map<string, { rule: MixingRule; names: string[] }>()
  for (const { name, rule } of pairsOf(substances)) {
    const paper = papers.get(rule.doi + rule.basis) ?? { rule, names: [] }
    paper.names.push(name)
    papers.set(rule.doi + rule.basis, paper)
  }
  return [...papers.values()].map(({ rule, names }) => ({
    id: `mixing-${rule.basis === 'estimated' ? 'estimated' : rule.doi}`,
    title: `Mixing parameters of ${names.join(', ')}: ${rule.citation}`,
    mark: 'computed' as const,
    url: `https://doi.org/${rule.doi}`,
  }))
}

/** What a figure of a blend at saturation rests on, where that is less than a paper. */
export const mixingBasis = ({ info }: Refrigerant): 'estimated' | undefined =>
  pairsOf(info.composition.map(({ substance }) => substance)).some(
    ({ rule }) => rule.basis === 'estimated',
  )
    ? 'estimated'
    : undefined

const { least, most } = ESTIMATED_K
const inF = (kelvin: number) => temperatureDifference(kelvin).to('°F').toFixed(0)
const OFF_BY = `${least} to ${most} K (${inF(least)} to ${inF(most)} °F)`

/**
 * Says which pairs no paper covers, so that nobody takes their figures for measured ones.
 *
 * How far off: blends with such pairs (R-401A, R-402A, R-408A, R-409A, R-413A, R-414B) boil up to
 * that far from the normal boiling points of ASHRAE Standard 34, as the 2021 ASHRAE Handbook prints them.
 */
export function estimatedWarnings(substances: readonly string[]): readonly Warning[] {
  const names = pairsOf(substances).flatMap(({ name, rule }) =>
    rule.basis === 'estimated' ? [name] : [],
  )
  if (names.length === 0) return []
  return [
    {
      code: 'estimated-mixing',
      message: `Its properties are partly estimated: no published mixing parameters for ${names.join(', ')}. Saturation temperatures may be off by ${OFF_BY}, and pressures, superheat and subcooling with them. The maker's own pressure-temperature figures go first.`,
    },
  ]
}
