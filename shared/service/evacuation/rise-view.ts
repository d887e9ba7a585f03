import { waterVapourPressure } from '../../physics/water.ts'
import { propagate, type Uncertain } from '../../quantity/index.ts'
import type { RiseFits } from './rise-fit.ts'
import type { RiseFit, RisePoint } from './rise-shape.ts'

export const RISE_VERDICTS = [
  'leaking',
  'wet',
  'wet-and-leaking',
  'levels-off-above-water',
  'tight-and-dry',
  'too-short-to-tell',
  'cannot-tell',
] as const
export type RiseVerdict = (typeof RISE_VERDICTS)[number]

export interface RiseReading {
  readonly points: readonly RisePoint[]
  /** Temperature of the coldest part, K, with its expanded uncertainty. */
  readonly temperature: Uncertain
  readonly barometerPa: number
  /** Expanded uncertainty of the level of a reading (not of its change), Pa. */
  readonly levelPlusMinusPa: number
  /** Scatter of the gauge from one reading to the next, Pa, where it is known. */
  readonly scatterPa?: number | undefined
  /** Electronic gauges scatter in proportion to the reading, dial gauges by the same everywhere. */
  readonly proportional: boolean
  /** A steady rise below this is of no consequence here, Pa/s. */
  readonly negligibleSlope: number
  /** A rise that levels off below this does not count as wet, Pa. */
  readonly dryBelowPa: number
}

export interface RiseJudgement {
  readonly verdict: RiseVerdict
  readonly because: string
  /** Steady rise, Pa/s, with its expanded uncertainty, where the verdict rests on one. */
  readonly slope: number
  readonly slopePlusMinus: number
  /** Where the rise levels off, Pa, and the range that the readings leave open. */
  readonly plateau?: { readonly pa: number; readonly fromPa: number; readonly toPa: number }
  readonly moisture?: 'liquid-water' | 'dissolved'
  /** How much longer to watch, s from the first reading, where that would settle it. */
  readonly watchForS?: number
  readonly fits: RiseFits
  readonly vapourPa: number
  readonly usedPoints: number
}

/** BIC difference that counts as strong evidence (Kass & Raftery, J. Am. Stat. Assoc. 90, 773, 1995: 6 to 10). */
export const STRONG = 6
/**
 * Above the vapour pressure by more than this water cannot be what pushes: judgement, a gauge 10 % off
 * and a system 4 K warmer than its coldest part was taken for. Not widened by the ± of a reading, so
 * that a better thermometer never undoes a verdict.
 */
export const ABOVE_VAPOUR = 1.4
/** A plateau or a level from this share of the vapour pressure on is liquid water; below, water in oil. */
export const NEAR_VAPOUR = 0.5
/** Fewer readings do not show a shape. */
export const FEWEST_POINTS = 5
/** Longer than this nobody watches a gauge. */
export const LONGEST_WATCH_S = 7200

/** What the parts of a verdict look at. */
export interface RiseView {
  readonly reading: RiseReading
  readonly used: readonly RisePoint[]
  readonly fits: RiseFits
  /** Fits of all readings, those above half of the air's pressure too, where a leak slows down. */
  readonly whole: () => RiseFits
  readonly vapourPa: number
  /** Highest level that counts as that of water, Pa. */
  readonly highestWaterPa: number
}

/** A verdict with its reason, before the fits are added to it. */
export type Judged = Omit<RiseJudgement, 'fits' | 'vapourPa' | 'usedPoints'>

/** Steady rise of a fit with its expanded uncertainty. */
export const steadyOf = ({ slope, slopeUncertainty }: RiseFit) => ({
  slope,
  slopePlusMinus: 2 * slopeUncertainty,
})

/** Time from the first reading to the last, s. */
export const spanOf = (points: readonly RisePoint[]) =>
  (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)

/** A level as a share of water's vapour pressure at the temperature, with the ± of both. */
export const shareOfVapour = (levelPa: number, { reading }: RiseView): Uncertain =>
  propagate(
    [{ si: levelPa, plusMinus: reading.levelPlusMinusPa }, reading.temperature],
    (pressurePa, kelvin) => pressurePa / waterVapourPressure(kelvin),
  )
