import type { Mark } from '../sources.ts'

/** Where a figure of this file comes from, and how far that was checked. */
interface FileSource {
  readonly title: string
  readonly mark: Mark
  readonly url?: string
  readonly note?: string
}

/** A value with the key of its source in the same file's `sources`. */
export interface Sourced<T> {
  readonly value: T
  readonly source: string
}

/** Global warming potential over 100 years. */
export interface WarmingPotential extends Sourced<number> {
  /** IPCC assessment report that the value belongs to. */
  readonly report: 'AR4' | 'AR5' | 'AR6'
  /** The value is an upper bound: "below 1". */
  readonly below?: boolean
}

/** An oil met in practice with this refrigerant, and where. */
export interface UsualOil {
  readonly oil: string
  readonly use: string
  readonly source: string
}

/** A figure about burning, such as the lower flammability limit. */
export interface FlammabilityFact extends Sourced<number> {
  readonly quantity: string
  readonly unit: string
}

/** A refrigerant that a person can pick: what `data/refrigerants/<id>.json` holds. */
export interface RefrigerantInfo {
  /** ASHRAE 34 designation with its hyphen: 'R-134a'. */
  readonly id: string
  /** Chemical name, or for a blend what it is made of. */
  readonly name: string
  /** Other ways a person may write it; case, hyphens, spaces and brackets do not count. */
  readonly aliases: readonly string[]
  readonly kind: 'pure' | 'zeotrope' | 'near-azeotrope' | 'azeotrope'
  /** Substances of `data/substances` with their nominal mass fractions. */
  readonly composition: readonly { readonly substance: string; readonly massFraction: number }[]
  /** ASHRAE 34 safety class: 'A1', 'A2L', 'A2' or 'A3'. */
  readonly safetyClass: Sourced<string>
  /** Ozone depletion potential, R-11 = 1. */
  readonly odp: Sourced<number>
  readonly gwp: readonly WarmingPotential[]
  readonly oils: readonly UsualOil[]
  readonly flammability: readonly FlammabilityFact[]
  /** What a person should know beside the figures; may be empty. */
  readonly notes: readonly string[]
  readonly sources: Readonly<Record<string, FileSource>>
}
