import data from '../../data/service/property-uncertainty.json' with { type: 'json' }
import { keptBy, keptWith } from '../kept.ts'
import type { Source } from '../sources.ts'
import type { Phase } from '../substance/density.ts'
import { substanceData } from '../substance/library.ts'
import { type MixingRule, mixingRule } from '../substance/mixing-rules.ts'
import type { Line, Refrigerant } from './refrigerant.ts'
import { saturationPressure } from './saturation.ts'

/** How far the computed properties themselves may be off, with coverage factor 2. */
export interface PropertyUncertainty {
  /** K, of a saturation temperature at a pressure. */
  readonly temperatureK: number
  /** Relative, of a saturation pressure at a temperature. */
  readonly pressure: number
  /** What it rests on, the weakest part of it. */
  readonly basis: 'pure' | 'published' | 'estimated'
  readonly sources: readonly Source[]
}

/** What the mixing of some substances adds: in pressure where papers say so, in kelvin otherwise. */
export interface MixingUncertainty {
  readonly basis: 'published' | 'estimated'
  /** Relative, of a bubble or dew pressure. */
  readonly pressure?: number
  /** K, of a bubble or dew temperature. */
  readonly temperatureK?: number
  readonly liquidDensity: number
  readonly vapourDensity: number
  readonly sources: readonly Source[]
}

type SourceId = keyof typeof data.sources

/** Estimated pairs: how far saturation temperatures may be off, K, from the least to the most. */
export const ESTIMATED_K = {
  least: data.estimatedPairs.fromK,
  most: data.estimatedPairs.toK,
} as const

const SLOPE_STEP_K = 0.01

/**
 * Uncertainty of a refrigerant's own saturation data at a temperature in K on one of its lines:
 * equations, mixing model and curve fit, beside whatever the readings are worth.
 *
 * A published size is relative to the pressure, an estimated one is in kelvin; the slope of the
 * line turns the one into the other.
 *
 * @throws {CalcError} as saturation does outside its range.
 */
export function propertyUncertainty(
  r: Refrigerant,
  temperatureK: number,
  line: Line,
): PropertyUncertainty {
  const last = asked[line].get(r)
  if (last?.temperatureK === temperatureK) return last.found
  const found = workOut(r, temperatureK, line)
  asked[line].set(r, { temperatureK, found })
  return found
}

/** What was asked last: one answer asks for the same point again and again, for figures, words and sources. */
const asked: Readonly<
  Record<
    Line,
    WeakMap<Refrigerant, { readonly temperatureK: number; readonly found: PropertyUncertainty }>
  >
> = { bubble: new WeakMap(), dew: new WeakMap() }

function workOut(r: Refrigerant, temperatureK: number, line: Line): PropertyUncertainty {
  const perK = logSlope(r, temperatureK, line)
  const { pure, curve } = data
  const mixing = mixingOf(r)
  const { basis, sources } = propertyBasis(r)
  const fit = Math.max(curve.pressure, curve.temperatureK * perK)
  const mixed = mixing?.pressure ?? (mixing?.temperatureK ?? 0) * perK
  // a fit to a mixture's own pressures has the error of its components in it already
  const model = mixing === undefined ? pure.pressure : Math.max(mixed, pure.pressure)
  const pressure = Math.hypot(model, fit)
  return {
    temperatureK: pressure / perK,
    pressure,
    basis,
    sources,
  }
}

/** What {@link propertyUncertainty} rests on, wherever it is asked for. */
export const propertyBasis = keptWith(
  (r: Refrigerant): Pick<PropertyUncertainty, 'basis' | 'sources'> => {
    const { basis, sources } = mixingOf(r) ?? {
      basis: 'pure',
      sources: [sourceOf(data.pure.source)],
    }
    return { basis, sources: [...sources, sourceOf(data.curve.source)] }
  },
)

const mixingOf = keptWith((r: Refrigerant) => mixingUncertainty(substancesOf(r), r.info.id))

/**
 * Relative uncertainty of a density at a known temperature and pressure. That of saturated vapour
 * at a temperature alone moves with the saturation pressure as well.
 */
export function densityUncertainty(r: Refrigerant, phase: Phase): number {
  const size = phase === 'liquid' ? 'liquidDensity' : 'vapourDensity'
  const mixing = mixingOf(r)
  return Math.hypot(Math.max(data.pure[size], mixing?.[size] ?? 0), data.curve.density)
}

/**
 * Uncertainty of the mixture model for these substances, that of its weakest pair; undefined for
 * one substance.
 *
 * @param blend - Designation of the blend that they make, where its own distance is known.
 */
export function mixingUncertainty(
  substances: readonly string[],
  blend?: string,
): MixingUncertainty | undefined {
  const rules = pairsOf(substances).map(({ rule }) => rule)
  if (rules.length === 0) return undefined
  const papers = rules.map(sizeOf)
  const largest = (size: 'liquidDensity' | 'vapourDensity') =>
    Math.max(...papers.map((paper) => paper[size]))
  const estimated = rules.some(({ basis }) => basis === 'estimated')
  const frame = {
    basis: estimated ? ('estimated' as const) : ('published' as const),
    liquidDensity: largest('liquidDensity'),
    vapourDensity: largest('vapourDensity'),
  }
  const own = blend === undefined ? undefined : BLENDS[blend]
  if (own !== undefined) {
    return { ...frame, temperatureK: own.temperatureK, sources: [sourceOf(own.source)] }
  }
  if (estimated) {
    const { toK, source } = data.estimatedPairs
    return { ...frame, temperatureK: toK, sources: [sourceOf(source)] }
  }
  const published = papers.flatMap((paper) => ('pressure' in paper ? [paper] : []))
  return {
    ...frame,
    pressure: Math.max(...published.map(({ pressure }) => pressure)),
    sources: [...new Set(published.map(({ source }) => source))].map(sourceOf),
  }
}

interface Pair {
  readonly name: string
  readonly rule: MixingRule
}

/** Every pair of these substances with the rule that mixes it. */
export function pairsOf(substances: readonly string[]): readonly Pair[] {
  return substances.flatMap((a, i) =>
    substances.slice(i + 1).map((b) => ({
      name: `${a}/${b}`,
      rule: mixingRule(substanceData(a), substanceData(b)),
    })),
  )
}

/** Blends whose distance is known, by designation. */
const BLENDS: Readonly<Record<string, { readonly temperatureK: number; readonly source: string }>> =
  data.blends

const PAPERS: Readonly<Record<string, (typeof data.publishedPairs)['other']>> = data.publishedPairs

const sizeOf = ({ basis, doi }: MixingRule) =>
  basis === 'estimated' ? data.estimatedPairs : (PAPERS[doi] ?? data.publishedPairs.other)

/** dln p/dT along a line, 1/K. */
function logSlope(r: Refrigerant, temperatureK: number, line: Line): number {
  const { fromK, toK } = r[line]
  const here = saturationPressure(r, temperatureK, line)
  const high = Math.min(temperatureK + SLOPE_STEP_K, toK)
  const low = Math.max(Math.min(temperatureK, high) - SLOPE_STEP_K, fromK)
  return (
    (saturationPressure(r, high, line) - saturationPressure(r, low, line)) / (here * (high - low))
  )
}

const substancesOf = (r: Refrigerant) => r.info.composition.map(({ substance }) => substance)

const sourceOf = keptBy((id: string): Source => {
  const { mark, ...rest } = data.sources[id as SourceId]
  return { id, mark: mark as Source['mark'], ...rest }
})
