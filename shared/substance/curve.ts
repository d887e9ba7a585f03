import { evaluator, type Pieces } from './chebyshev.ts'

/** A series as stored: coefficients are whole multiples of `unit`, which is what they are good for. */
export interface SeriesFile {
  readonly unit: number
  /** Where one piece ends and the next begins; the line's own ends are not repeated here. */
  readonly cuts?: readonly number[]
  readonly c: readonly (readonly number[])[]
}

/**
 * One side of the two-phase region, fitted: `data/saturation/<id>.json` holds two of these.
 *
 * All but `temperature` are series in √(1 − T/endK), in which the region's closing end is smooth;
 * `temperature` is a series in √(ln(endPa/p)). Enthalpy and entropy need no curve: they follow
 * from the equation of state at the curve's density.
 */
export interface LineFile {
  readonly fromK: number
  readonly toK: number
  readonly endK: number
  readonly endPa: number
  /** ln(p/Pa); left out where both lines are one (pure substances): see the bubble line. */
  readonly logPressure?: SeriesFile
  /** K; left out where both lines are one. */
  readonly temperature?: SeriesFile
  /** ln of density in kg/m³ */
  readonly logDensity: SeriesFile
}

/** Largest differences met between the fit and the solver it was fitted to. */
export interface LargestErrors {
  readonly temperatureK: number
  readonly pressureRelative: number
  readonly densityRelative: number
  /** Within 2 % of the critical temperature, where densities run steeply. */
  readonly densityRelativeNearCritical: number
}

/** The compact saturation curves of one refrigerant: what `data/saturation/<id>.json` holds. */
export interface CurveFile {
  readonly id: string
  /** kg/mol. */
  readonly molarMass: number
  readonly criticalK: number
  readonly criticalPa: number
  /**
   * What the equation's own enthalpy (J/kg) and entropy (J/(kg·K)) must be raised by to meet the
   * IIR reference: 200 kJ/kg and 1 kJ/(kg·K) for saturated (bubble) liquid at 0 °C.
   */
  readonly raise: { readonly enthalpy: number; readonly entropy: number }
  readonly bubble: LineFile
  readonly dew: LineFile
}

/** One line, ready to evaluate. Ranges are the caller's to check: `fromK`…`toK`, `fromPa`…`toPa`. */
export interface LineCurve {
  readonly fromK: number
  readonly toK: number
  readonly fromPa: number
  readonly toPa: number
  /** Pa at K. */
  pressure(temperatureK: number): number
  /** K at Pa. */
  temperature(pressurePa: number): number
  /** kg/m³ at K: liquid of the bubble line, vapour of the dew line. */
  density(temperatureK: number): number
}

/** The bubble and dew curves of a file. */
export function curves(file: CurveFile): { readonly bubble: LineCurve; readonly dew: LineCurve } {
  return { bubble: curve(file.bubble, file.bubble), dew: curve(file.dew, file.bubble) }
}

function curve(line: LineFile, shared: LineFile): LineCurve {
  const { fromK, toK, endK, endPa } = line
  const s = fromEnd(endK)
  const overTemperature = (file: SeriesFile) => evaluator(piecesOf(file, s(toK), s(fromK)))
  const logPressure = overTemperature(line.logPressure ?? required(shared.logPressure))
  const logDensity = overTemperature(line.logDensity)
  const pressure = (temperatureK: number) => Math.exp(logPressure(s(temperatureK)))
  const [fromPa, toPa] = [pressure(fromK), pressure(toK)]
  const w = belowEnd(endPa)
  const temperature = evaluator(
    piecesOf(line.temperature ?? required(shared.temperature), w(toPa), w(fromPa)),
  )
  return {
    fromK,
    toK,
    fromPa,
    toPa,
    pressure,
    temperature: (pressurePa) => temperature(w(pressurePa)),
    density: (temperatureK) => Math.exp(logDensity(s(temperatureK))),
  }
}

/** √(1 − T/endK). Rounding at the very end must not become the root of a negative number. */
export function fromEnd(endK: number): (temperatureK: number) => number {
  return (temperatureK) => Math.sqrt(Math.max(0, 1 - temperatureK / endK))
}

/** √(ln(endPa/p)). */
export function belowEnd(endPa: number): (pressurePa: number) => number {
  const logEnd = Math.log(endPa)
  return (pressurePa) => Math.sqrt(Math.max(0, logEnd - Math.log(pressurePa)))
}

/** A stored series between the ends of its line. */
export function piecesOf({ unit, cuts = [], c }: SeriesFile, from: number, to: number): Pieces {
  return { x: [from, ...cuts, to], c: c.map((piece) => piece.map((value) => value * unit)) }
}

function required(series: SeriesFile | undefined): SeriesFile {
  if (series === undefined)
    throw new RangeError('the bubble line must hold pressure and temperature')
  return series
}
