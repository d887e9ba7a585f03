import { evaluator } from '../../shared/substance/chebyshev.ts'
import {
  belowEnd,
  type CurveFile,
  curves,
  fromEnd,
  type LargestErrors,
  type LineCurve,
  type LineFile,
  piecesOf,
} from '../../shared/substance/curve.ts'
import { fitSeries, round } from './fit.ts'
import type { ExactLine, LineState, SaturationLines } from './provider.ts'

/** Errors allowed in the fit; below a third of what the project promises. */
const ALLOWED = {
  logPressure: 3e-7,
  temperatureK: 3e-4,
  density: 3e-7,
  densityNearCritical: 1e-5,
}
/** Fraction of the critical temperature above which densities run too steep for the full aim. */
const NEAR_CRITICAL = 0.98
/** The fit is let off a little beyond that, so that the full aim holds up to it. */
const EASED = 0.985
const CHECKS = 400
/** 216.592 K in thousandths is not a whole number by its last bit. */
const ROUNDING = 1e-6
const ICE_POINT_K = 273.15
/** IIR reference state: saturated (bubble) liquid at 0 °C. */
const IIR = { enthalpy: 200e3, entropy: 1e3 }

/** The compact curves of a refrigerant, fitted to its exact lines, and the errors measured. */
export function fitCurves(lines: SaturationLines): {
  readonly file: CurveFile
  readonly largestErrors: LargestErrors
} {
  const zero = lines.bubble.at(ICE_POINT_K)
  const exact = { bubble: tidy(lines.bubble), dew: tidy(lines.dew) }
  const file = {
    id: lines.id,
    molarMass: round(lines.molarMass, 9),
    criticalK: round(lines.criticalK, 7),
    criticalPa: round(lines.criticalPa, 7),
    raise: {
      enthalpy: round(IIR.enthalpy - zero.enthalpy, 9),
      entropy: round(IIR.entropy - zero.entropy, 8),
    },
    bubble: fitLine(exact.bubble, lines.criticalK, true),
    dew: fitLine(exact.dew, lines.criticalK, !lines.pure),
  }
  return { file, largestErrors: measure(file, exact, lines.criticalK) }
}

/** The line with ends of few digits, none of them outside it, and each point solved once. */
function tidy(line: ExactLine): ExactLine {
  const known = new Map<number, LineState>()
  return {
    fromK: Math.ceil(line.fromK * 1e3 - ROUNDING) / 1e3,
    toK: Math.floor(line.toK * 1e3 + ROUNDING) / 1e3,
    endK: round(line.endK, 7),
    endPa: round(line.endPa, 7),
    at(temperatureK) {
      const found = known.get(temperatureK) ?? line.at(temperatureK)
      known.set(temperatureK, found)
      return found
    },
  }
}

function fitLine(line: ExactLine, criticalK: number, withPressure: boolean): LineFile {
  const { fromK, toK, endK, endPa } = line
  const s = fromEnd(endK)
  const temperatureOf = (x: number) => Math.min(toK, Math.max(fromK, endK * (1 - x * x)))
  const over = { from: s(toK), to: s(fromK) }
  const series = (value: (state: LineState) => number, allowed: (temperatureK: number) => number) =>
    fitSeries({
      ...over,
      exact: (x) => value(line.at(temperatureOf(x))),
      allowed: (x) => allowed(temperatureOf(x)),
    })
  const logDensity = series(
    (state) => Math.log(state.density),
    (t) => (t > EASED * criticalK ? ALLOWED.densityNearCritical : ALLOWED.density),
  )
  const rest = { fromK, toK, endK, endPa, logDensity }
  if (!withPressure) return rest
  const logPressure = series(
    (state) => Math.log(state.pressurePa),
    () => ALLOWED.logPressure,
  )
  // The program takes the pressures of the ends from the fitted curve: so must this.
  const w = belowEnd(endPa)
  const overS = evaluator(piecesOf(logPressure, over.from, over.to))
  const fitted = (temperatureK: number) => overS(s(temperatureK))
  const temperature = fitSeries({
    from: w(Math.exp(fitted(toK))),
    to: w(Math.exp(fitted(fromK))),
    exact: (x) => temperatureAt(line, fitted, Math.log(endPa) - x * x),
    allowed: () => ALLOWED.temperatureK,
  })
  return { ...rest, logPressure, temperature }
}

const MOST_STEPS = 60
/** K either side, for the slope of the fitted ln p. */
const SLOPE_K = 0.01

/**
 * K at which the exact line has this ln(p/Pa): where the fitted ln p has it, found in a bracket,
 * then moved by what the exact line says there. The fit is near enough for one such move.
 */
function temperatureAt(line: ExactLine, fitted: (temperatureK: number) => number, logP: number) {
  const near = temperatureOn(fitted, line.fromK, line.toK, logP)
  const slope = (fitted(near + SLOPE_K) - fitted(near - SLOPE_K)) / (2 * SLOPE_K)
  const moved = near + (logP - Math.log(line.at(near).pressurePa)) / slope
  return Math.min(line.toK, Math.max(line.fromK, moved))
}

/** Secant held in a bracket, in 1/T, against which ln p runs nearly straight. */
function temperatureOn(
  fitted: (temperatureK: number) => number,
  fromK: number,
  toK: number,
  logP: number,
): number {
  let [low, high] = [fromK, toK]
  let [gapLow, gapHigh] = [fitted(low) - logP, fitted(high) - logP]
  if (gapLow >= 0) return low
  if (gapHigh <= 0) return high
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const weight = gapLow / (gapLow - gapHigh)
    const t = 1 / (1 / low + weight * (1 / high - 1 / low))
    const found = fitted(t) - logP
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
  file: CurveFile,
  exact: { readonly bubble: ExactLine; readonly dew: ExactLine },
  criticalK: number,
): LargestErrors {
  const made = curves(file)
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
  }
}
