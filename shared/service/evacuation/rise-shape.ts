/** One reading of the standing vacuum. */
export interface RisePoint {
  readonly timeS: number
  readonly pressurePa: number
}

export const RISE_MODELS = ['flat', 'steady', 'levelling', 'levelling-and-steady'] as const
export type RiseModel = (typeof RISE_MODELS)[number]

/** p(t) = start + slope·t + step·(1 − exp(−t/constant)), fitted by least squares. */
export interface RiseFit {
  readonly model: RiseModel
  readonly startPa: number
  /** Steady rise, Pa/s. */
  readonly slope: number
  /** Standard uncertainty of the slope at the fitted time constant, Pa/s. */
  readonly slopeUncertainty: number
  /** Rise of the part that levels off, Pa. */
  readonly stepPa: number
  /** Time constant of that part, s. */
  readonly constantS: number
  readonly squares: number
  /** Bayesian information criterion: smaller is better, 6 and more is strong evidence. */
  readonly bic: number
}

/** Where the part of a fit that levels off ends, Pa. */
export const plateauOf = ({ startPa, stepPa }: RiseFit) => startPa + stepPa

/** What the gauge can tell apart from one reading to the next. */
export interface GaugeScatter {
  /** Standard deviation expected of a reading before the fit, Pa. */
  readonly sigmaOf: (pressurePa: number) => number
  /** How many readings that expectation is worth. */
  readonly weight: number
}

const PARAMETERS: Readonly<Record<RiseModel, number>> = {
  flat: 1,
  steady: 2,
  levelling: 3,
  'levelling-and-steady': 4,
}

type Fitted = Pick<RiseFit, 'model' | 'squares'>

/** Of the readings in units of what was expected of the gauge; the expectation counts as `weight` readings. */
export const variance = ({ model, squares }: Fitted, count: number, { weight }: GaugeScatter) =>
  (squares + weight) / (Math.max(count - PARAMETERS[model], 0) + weight)

/**
 * G. Schwarz, Ann. Statist. 6, 461 (1978), with the unknown scatter integrated under a weak expectation
 * of what the gauge does, so that four points on a line do not count as a perfect gauge.
 */
export const criterion = ({ model, squares }: Fitted, count: number, { weight }: GaugeScatter) =>
  (count + weight) * Math.log(squares + weight) + PARAMETERS[model] * Math.log(count)
