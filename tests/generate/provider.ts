/** −60 °C: where the curves begin, or at the triple point where that is warmer. */
export const COLDEST_K = 213.15

/** One end of the two-phase region. Enthalpy and entropy on the equation's own zero. */
export interface LineState {
  readonly temperatureK: number
  readonly pressurePa: number
  /** kg/m³ */
  readonly density: number
  /** J/kg */
  readonly enthalpy: number
  /** J/(kg·K) */
  readonly entropy: number
}

/** A bubble line (its liquid) or a dew line (its vapour), solved exactly. */
export interface ExactLine {
  readonly fromK: number
  readonly toK: number
  /**
   * Where the line closes like a square root, or a point a little beyond `toK` that serves for it:
   * the fit runs over √(1 − T/endK) and √(ln(endPa/p)), so endK > toK and endPa > p(toK).
   */
  readonly endK: number
  readonly endPa: number
  at(temperatureK: number): LineState
}

/** What the fitting program needs to know of one refrigerant. */
export interface SaturationLines {
  readonly id: string
  /** kg/mol */
  readonly molarMass: number
  readonly criticalK: number
  readonly criticalPa: number
  /** Both lines have one pressure at each temperature. */
  readonly pure: boolean
  readonly bubble: ExactLine
  readonly dew: ExactLine
}

/**
 * A refrigerant's lines, not yet solved, with everything their numbers depend on
 * (equations, mixing data, composition), from which the file's stamp is made.
 */
export interface LinesSource {
  readonly id: string
  readonly inputs: readonly unknown[]
  solve(): SaturationLines
}
