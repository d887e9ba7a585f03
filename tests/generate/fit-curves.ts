import {
  type CurveFile,
  curves,
  type LargestErrors,
  type LineCurve,
  type LineFile,
} from '../../shared/substance/curve.ts'
import { fitSeries } from './fit.ts'
import type { ExactLine, LineState, SaturationLines } from './provider.ts'

/** Errors allowed in the fit; a tenth or less of what the project promises. */
const ALLOWED = {
  logPressure: 1e-7,
  temperatureK: 2e-5,
  density: 1e-7,
  densityNearCritical: 5e-6,
  enthalpyJPerKg: 0.5,
  entropyJPerKgK: 0.002,
}
/** Fraction of the critical temperature above which densities run too steep for the full aim. */
const NEAR_CRITICAL = 0.98
const CHECKS = 400
const ICE_POINT_K = 273.15
/** IIR reference state: saturated (bubble) liquid at 0 °C. */
const IIR = { enthalpy: 200e3, entropy: 1e3 }

/** The compact curves of a refrigerant, fitted to its exact lines, with the errors measured. */
export function fitCurves(lines: SaturationLines, madeFrom: string): CurveFile {
  const zero = lines.bubble.at(ICE_POINT_K)
  const raise = {
    enthalpy: IIR.enthalpy - zero.enthalpy,
    entropy: IIR.entropy - zero.entropy,
  }
  const exact = { bubble: remember(lines.bubble, raise), dew: remember(lines.dew, raise) }
  const file = {
    id: lines.id,
    madeFrom,
    molarMass: lines.molarMass,
    criticalK: lines.criticalK,
    criticalPa: lines.criticalPa,
    raise,
    bubble: fitLine(exact.bubble, lines.criticalK, true),
    dew: fitLine(exact.dew, lines.criticalK, !lines.pure),
  }
  const largestErrors = measure(file, exact, lines.criticalK)
  return { ...file, largestErrors }
}

/** The line with its enthalpy and entropy raised to the IIR reference, each point solved once. */
function remember(line: ExactLine, raise: CurveFile['raise']): ExactLine {
  const known = new Map<number, LineState>()
  return {
    ...line,
    at(temperatureK) {
      const found = known.get(temperatureK)
      if (found !== undefined) return found
      const state = line.at(temperatureK)
      const raised = {
        ...state,
        enthalpy: state.enthalpy + raise.enthalpy,
        entropy: state.entropy + raise.entropy,
      }
      known.set(temperatureK, raised)
      return raised
    },
  }
}

function fitLine(line: ExactLine, criticalK: number, withPressure: boolean): LineFile {
  const { fromK, toK, endK, endPa } = line
  const sOf = (temperatureK: number) => Math.sqrt(1 - temperatureK / endK)
  const temperatureOf = (s: number) => Math.min(toK, Math.max(fromK, endK * (1 - s * s)))
  const over = { from: sOf(toK), to: sOf(fromK) }
  const series = (value: (state: LineState) => number, allowed: (temperatureK: number) => number) =>
    fitSeries({
      ...over,
      exact: (s) => value(line.at(temperatureOf(s))),
      allowed: (s) => allowed(temperatureOf(s)),
    })
  const fromPa = line.at(fromK).pressurePa
  const toPa = line.at(toK).pressurePa
  const logDensity = series(
    (state) => Math.log(state.density),
    (t) => (t > NEAR_CRITICAL * criticalK ? ALLOWED.densityNearCritical : ALLOWED.density),
  )
  const enthalpy = series(
    (state) => state.enthalpy,
    () => ALLOWED.enthalpyJPerKg,
  )
  const entropy = series(
    (state) => state.entropy,
    () => ALLOWED.entropyJPerKgK,
  )
  const rest = { fromK, toK, fromPa, toPa, endK, endPa, logDensity, enthalpy, entropy }
  if (!withPressure) return rest
  const logPressure = series(
    (state) => Math.log(state.pressurePa),
    () => ALLOWED.logPressure,
  )
  const wOf = (pressurePa: number) => Math.sqrt(Math.log(endPa / pressurePa))
  const temperature = fitSeries({
    from: wOf(toPa),
    to: wOf(fromPa),
    exact: (w) => temperatureAt(line, Math.log(endPa) - w * w),
    allowed: () => ALLOWED.temperatureK,
  })
  return { ...rest, logPressure, temperature }
}

const MOST_STEPS = 60

/** K at which the exact line has this ln(p/Pa): secant held in a bracket. */
function temperatureAt(line: ExactLine, logP: number): number {
  const gap = (t: number) => Math.log(line.at(t).pressurePa) - logP
  let low = line.fromK
  let high = line.toK
  let gapLow = gap(low)
  let gapHigh = gap(high)
  if (gapLow >= 0) return low
  if (gapHigh <= 0) return high
  for (let step = 0; step < MOST_STEPS; step += 1) {
    // ln p runs nearly straight against 1/T.
    const weight = gapLow / (gapLow - gapHigh)
    const inverse = 1 / low + weight * (1 / high - 1 / low)
    const t = 1 / inverse
    const found = gap(t)
    if (Math.abs(found) < 1e-11 || high - low < 1e-8) return t
    if (found < 0) {
      low = t
      gapLow = found
      gapHigh *= 0.5 // Illinois: keeps the far end from sticking
    } else {
      high = t
      gapHigh = found
      gapLow *= 0.5
    }
  }
  throw new Error(`no temperature found for ln p = ${logP}`)
}

/** Largest differences between the curves as stored and the exact lines, on a grid of its own. */
function measure(
  file: Omit<CurveFile, 'largestErrors'>,
  exact: { readonly bubble: ExactLine; readonly dew: ExactLine },
  criticalK: number,
): LargestErrors {
  const made = curves({ ...file, largestErrors: NONE })
  const worst = { ...NONE }
  const pairs: [LineCurve, ExactLine][] = [
    [made.bubble, exact.bubble],
    [made.dew, exact.dew],
  ]
  for (const [curve, line] of pairs) {
    const s0 = Math.sqrt(1 - line.fromK / line.endK)
    const s1 = Math.sqrt(1 - line.toK / line.endK)
    for (let i = 0; i <= CHECKS; i += 1) {
      const s = s0 + ((s1 - s0) * i) / CHECKS
      const t = Math.min(line.toK, Math.max(line.fromK, line.endK * (1 - s * s)))
      const state = line.at(t)
      const density = Math.abs(curve.density(t) / state.density - 1)
      const key: keyof LargestErrors =
        t > NEAR_CRITICAL * criticalK ? 'densityRelativeNearCritical' : 'densityRelative'
      worst[key] = Math.max(worst[key], density)
      raise('temperatureK', curve.temperature(state.pressurePa) - t)
      raise('pressureRelative', curve.pressure(t) / state.pressurePa - 1)
      raise('enthalpyJPerKg', curve.enthalpy(t) - state.enthalpy)
      raise('entropyJPerKgK', curve.entropy(t) - state.entropy)
    }
  }
  return rounded(worst)

  function raise(key: keyof LargestErrors, error: number): void {
    worst[key] = Math.max(worst[key], Math.abs(error))
  }
}

const NONE = {
  temperatureK: 0,
  pressureRelative: 0,
  densityRelative: 0,
  densityRelativeNearCritical: 0,
  enthalpyJPerKg: 0,
  entropyJPerKgK: 0,
}

/** Two digits, rounded up. */
function rounded(errors: LargestErrors): LargestErrors {
  const up = (value: number): number => {
    if (value === 0) return 0
    const unit = 10 ** (Math.floor(Math.log10(value)) - 1)
    return Number((Math.ceil(value / unit) * unit).toPrecision(2))
  }
  return {
    temperatureK: up(errors.temperatureK),
    pressureRelative: up(errors.pressureRelative),
    densityRelative: up(errors.densityRelative),
    densityRelativeNearCritical: up(errors.densityRelativeNearCritical),
    enthalpyJPerKg: up(errors.enthalpyJPerKg),
    entropyJPerKgK: up(errors.entropyJPerKgK),
  }
}
