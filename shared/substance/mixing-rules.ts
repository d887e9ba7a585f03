import bell2022 from '../../data/mixing/bell-2022.json' with { type: 'json' }
import bell2023 from '../../data/mixing/bell-2023.json' with { type: 'json' }
import bell2025 from '../../data/mixing/bell-2025.json' with { type: 'json' }
import bellLemmon2016 from '../../data/mixing/bell-lemmon-2016.json' with { type: 'json' }
import bellMcLinden2020 from '../../data/mixing/bell-mclinden-2020.json' with { type: 'json' }
import estimated from '../../data/mixing/estimated.json' with { type: 'json' }
import kunzWagner2012 from '../../data/mixing/kunz-wagner-2012.json' with { type: 'json' }
import lemmonJacobsen2004 from '../../data/mixing/lemmon-jacobsen-2004.json' with { type: 'json' }
import type { PowerTerms, SubstanceData } from './types.ts'

/** What two components do to each other, in the order in which they were asked for. */
export interface MixingRule {
  readonly betaT: number
  readonly gammaT: number
  readonly betaV: number
  readonly gammaV: number
  /** Departure function αʳᵢⱼ already multiplied by its weight F; absent where there is none. */
  readonly departure?: PowerTerms
  /** `estimated`: a combining rule, not a fit to measurements of this pair. */
  readonly basis: 'published' | 'estimated'
  readonly citation: string
  readonly doi: string
}

/** One paper's file in data/mixing. */
interface MixingData {
  readonly id: string
  readonly basis: string
  readonly citation: string
  readonly doi: string
  readonly note: string
  readonly transcribedFrom: string
  readonly departures: Readonly<Record<string, PowerTerms>>
  readonly pairs: readonly PairData[]
}

/** A pair as its paper prints it; β belongs to the order of the two names. */
interface PairData {
  readonly components: readonly string[]
  readonly form: string
  readonly betaT?: number
  readonly gammaT?: number
  readonly betaV?: number
  readonly gammaV?: number
  readonly xiK?: number
  readonly zetaM3PerMol?: number
  readonly weight?: number
  /** Estimated pairs: the fitted pair whose γT this takes by analogy. */
  readonly like?: string
  readonly departure?: string
}

/** All files, the published ones first. */
export const MIXING_DATA: readonly MixingData[] = [
  lemmonJacobsen2004,
  bell2022,
  bell2023,
  bell2025,
  bellLemmon2016,
  bellMcLinden2020,
  kunzWagner2012,
  estimated,
]

type Found = { readonly file: MixingData; readonly pair: PairData }
let known: ReadonlyMap<string, Found> | undefined

/** Every pair by its two names; made when a blend is asked for. */
function pairs(): ReadonlyMap<string, Found> {
  known ??= new Map(
    [...MIXING_DATA]
      .reverse()
      .flatMap((file) =>
        file.pairs.map((pair) => [pair.components.join('/'), { file, pair }] as const),
      ),
  )
  return known
}

/**
 * The mixing rule of two substances.
 *
 * A pair that no file lists gets the Lorentz–Berthelot rule, marked `estimated`.
 */
export function mixingRule(first: SubstanceData, second: SubstanceData): MixingRule {
  const straight = pairs().get(`${first.id}/${second.id}`)
  if (straight !== undefined) return rule(straight.file, straight.pair, first, second)
  const turned = pairs().get(`${second.id}/${first.id}`)
  if (turned !== undefined) {
    const found = rule(turned.file, turned.pair, second, first)
    return { ...found, betaT: 1 / found.betaT, betaV: 1 / found.betaV }
  }
  const { citation, doi } = estimated
  return { betaT: 1, gammaT: 1, betaV: 1, gammaV: 1, basis: 'estimated', citation, doi }
}

function rule(
  file: MixingData,
  pair: PairData,
  first: SubstanceData,
  second: SubstanceData,
): MixingRule {
  const terms = pair.departure === undefined ? undefined : file.departures[pair.departure]
  const weight = pair.weight ?? 1
  return {
    ...(pair.form === 'lemmon-jacobsen'
      ? fromLemmonJacobsen(pair.xiK ?? 0, pair.zetaM3PerMol ?? 0, first, second)
      : {
          betaT: pair.betaT ?? 1,
          gammaT: pair.gammaT ?? 1,
          betaV: pair.betaV ?? 1,
          gammaV: pair.gammaV ?? 1,
        }),
    ...(terms === undefined ? {} : { departure: { ...terms, n: terms.n.map((n) => n * weight) } }),
    basis: file.basis === 'published' ? 'published' : 'estimated',
    citation: file.citation,
    doi: file.doi,
  }
}

/**
 * Lemmon and Jacobsen 2004, eqs. 4 and 5: T_r = Σ x_i T_i + ΣΣ x_i x_j ξ, 1/ρ_r = Σ x_i/ρ_i + ΣΣ x_i x_j ζ.
 *
 * With Σ x = 1 that is the Kunz–Wagner form with β = 1 and the γ below, for any number of components.
 */
function fromLemmonJacobsen(
  xi: number,
  zeta: number,
  first: SubstanceData,
  second: SubstanceData,
): { betaT: number; gammaT: number; betaV: number; gammaV: number } {
  const [t1, t2] = [first.reducing.temperatureK, second.reducing.temperatureK]
  const [v1, v2] = [1 / first.reducing.densityMolPerM3, 1 / second.reducing.densityMolPerM3]
  const meanVolume = (Math.cbrt(v1) + Math.cbrt(v2)) ** 3 / 8
  return {
    betaT: 1,
    gammaT: (t1 + t2 + xi) / (2 * Math.sqrt(t1 * t2)),
    betaV: 1,
    gammaV: (v1 + v2 + zeta) / (2 * meanVolume),
  }
}
