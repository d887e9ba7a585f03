import { evaluator, type Pieces } from './chebyshev.ts'

/**
 * One side of the two-phase region, fitted: `data/saturation/<id>.json` holds two of these.
 *
 * All but `temperature` are series in √(1 − T/endK), in which the region's closing end is smooth;
 * `temperature` is a series in √(ln(endPa/p)).
 */
export interface LineFile {
  readonly fromK: number
  readonly toK: number
  readonly fromPa: number
  readonly toPa: number
  readonly endK: number
  readonly endPa: number
  /** ln(p/Pa); left out where both lines are one (pure substances): see the bubble line. */
  readonly logPressure?: Pieces
  /** K; left out where both lines are one. */
  readonly temperature?: Pieces
  /** ln of density in kg/m³ */
  readonly logDensity: Pieces
  /** J/kg, IIR reference. */
  readonly enthalpy: Pieces
  /** J/(kg·K), IIR reference. */
  readonly entropy: Pieces
}

/** Largest differences met between the fit and the solver it was fitted to. */
export interface LargestErrors {
  readonly temperatureK: number
  readonly pressureRelative: number
  readonly densityRelative: number
  /** Within 2 % of the critical temperature, where densities run steeply. */
  readonly densityRelativeNearCritical: number
  readonly enthalpyJPerKg: number
  readonly entropyJPerKgK: number
}

/** The compact saturation curves of one refrigerant: what `data/saturation/<id>.json` holds. */
export interface CurveFile {
  readonly id: string
  /** Hash of everything the fit was made from. */
  readonly madeFrom: string
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
  readonly largestErrors: LargestErrors
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
  /** J/kg at K, IIR reference. */
  enthalpy(temperatureK: number): number
  /** J/(kg·K) at K, IIR reference. */
  entropy(temperatureK: number): number
}

/** The bubble and dew curves of a file. */
export function curves(file: CurveFile): { readonly bubble: LineCurve; readonly dew: LineCurve } {
  return { bubble: curve(file.bubble, file.bubble), dew: curve(file.dew, file.bubble) }
}

function curve(line: LineFile, shared: LineFile): LineCurve {
  const { fromK, toK, fromPa, toPa, endK } = line
  const logPressure = evaluator(line.logPressure ?? required(shared.logPressure))
  const temperature = evaluator(line.temperature ?? required(shared.temperature))
  const logDensity = evaluator(line.logDensity)
  const enthalpy = evaluator(line.enthalpy)
  const entropy = evaluator(line.entropy)
  const logEnd = Math.log(line.endPa)
  // Rounding at the very end must not become the root of a negative number.
  const fromEnd = (temperatureK: number) => Math.sqrt(Math.max(0, 1 - temperatureK / endK))
  return {
    fromK,
    toK,
    fromPa,
    toPa,
    pressure: (temperatureK) => Math.exp(logPressure(fromEnd(temperatureK))),
    temperature: (pressurePa) => temperature(Math.sqrt(Math.max(0, logEnd - Math.log(pressurePa)))),
    density: (temperatureK) => Math.exp(logDensity(fromEnd(temperatureK))),
    enthalpy: (temperatureK) => enthalpy(fromEnd(temperatureK)),
    entropy: (temperatureK) => entropy(fromEnd(temperatureK)),
  }
}

function required(pieces: Pieces | undefined): Pieces {
  if (pieces === undefined)
    throw new RangeError('the bubble line must hold pressure and temperature')
  return pieces
}
