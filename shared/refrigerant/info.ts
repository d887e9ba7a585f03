/** A value with where it comes from and how far that was checked (V, V2, M, CP, C, D). */
export interface Sourced<T> {
  readonly value: T
  readonly mark: string
  readonly source: string
}

/** Global warming potential over 100 years. */
export interface WarmingPotential extends Sourced<number> {
  /** IPCC assessment report: 'AR4', 'AR5' or 'AR6'. */
  readonly report: string
  /** The report gives an upper bound ("below 1") rather than a value. */
  readonly below?: boolean
}

/** An oil met in practice with this refrigerant, and where. */
export interface UsualOil {
  readonly oil: string
  readonly use: string
  readonly mark: string
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
  /** Other ways a person may write it; case, hyphens and spaces do not count. */
  readonly aliases: readonly string[]
  /** 'pure', 'zeotrope', 'near-azeotrope' or 'azeotrope'. */
  readonly kind: string
  readonly composition: readonly { readonly substance: string; readonly massFraction: number }[]
  /** ASHRAE 34 safety class: 'A1', 'A2L' and so on. */
  readonly safetyClass: Sourced<string>
  /** Ozone depletion potential, R-11 = 1. */
  readonly odp: Sourced<number>
  readonly gwp: readonly WarmingPotential[]
  readonly oils: readonly UsualOil[]
  readonly flammability: readonly FlammabilityFact[]
  /** What a mechanic must know before anything else; may be empty. */
  readonly notes: readonly string[]
  /** Sources of the file as a whole, such as of the composition. */
  readonly sources: readonly string[]
}
