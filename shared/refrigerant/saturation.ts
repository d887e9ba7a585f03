import { CalcError } from '../errors.ts'
import type { LineCurve } from '../substance/curve.ts'
import type { Phase } from '../substance/density.ts'
import { enthalpyAt, idealSlope, type MolarState, stateAt } from '../substance/state.ts'
import type { Line, Refrigerant } from './refrigerant.ts'
import { pressureRefusal, showPa, temperatureRefusal } from './refusal.ts'

/** Rounding at the ends of a curve: -60 °C is 213.14999999999998 K. Well inside what the curves hold. */
const EDGE_K = 1e-6
const EDGE = 1e-7

/**
 * Saturation temperature in K at an absolute pressure in Pa.
 *
 * Superheat is measured from the dew line, subcooling from the bubble line; for a pure substance
 * they are one. Throws 'above-critical', 'below-triple' or 'out-of-range'.
 */
export function saturationTemperature(r: Refrigerant, pressurePa: number, line: Line): number {
  const curve = r[line]
  if (pressurePa >= curve.fromPa * (1 - EDGE) && pressurePa <= curve.toPa * (1 + EDGE)) {
    // the two fits differ by a fraction of a millikelvin: at an end it must not fall off the line
    return Math.min(Math.max(curve.temperature(pressurePa), curve.fromK), curve.toK)
  }
  throw pressureRefusal(r, line, pressurePa)
}

/** Saturation pressure in Pa absolute at a temperature in K. Throws as saturationTemperature. */
export function saturationPressure(r: Refrigerant, temperatureK: number, line: Line): number {
  return lineAt(r, temperatureK, line).pressure(temperatureK)
}

/** kg/m³ at K: liquid on the bubble line, vapour on the dew line. */
export function saturatedDensity(r: Refrigerant, temperatureK: number, phase: Phase): number {
  return lineAt(r, temperatureK, lineOf(phase)).density(temperatureK)
}

/** J/kg at K; 200 kJ/kg for saturated liquid at 0 °C (IIR). One evaluation of the equation. */
export function saturatedEnthalpy(r: Refrigerant, temperatureK: number, phase: Phase): number {
  return withSlope(r, temperatureK, phase, idealSlope(r.model(), temperatureK))
}

/** J/(kg·K) at K; 1 kJ/(kg·K) for saturated liquid at 0 °C (IIR). One evaluation of the equation. */
export function saturatedEntropy(r: Refrigerant, temperatureK: number, phase: Phase): number {
  return saturatedState(r, temperatureK, phase).entropy / r.molarMass + r.raise.entropy
}

/**
 * Heat in J/kg that boils saturated liquid to saturated vapour at a constant absolute pressure
 * in Pa: dew enthalpy less bubble enthalpy.
 *
 * Enthalpies run steeply towards the critical point, and the curves' fraction of a millikelvin with
 * them: within 0.001 % of our own solver up to 0.95 of the critical temperature, 0.01 % up to 0.995,
 * 0.05 % up to 0.999, 0.3 % at the end of the curves.
 */
export const latentHeat = (r: Refrigerant, pressurePa: number): number =>
  latentHeatBetween(
    r,
    saturationTemperature(r, pressurePa, 'bubble'),
    saturationTemperature(r, pressurePa, 'dew'),
  )

/** The same between the temperatures in K at which it begins to boil and is dry, at one pressure. */
export function latentHeatBetween(r: Refrigerant, boilsK: number, dryK: number): number {
  const slope = idealSlope(r.model(), boilsK)
  // Of a pure substance both are one temperature, and the ideal gas is asked once.
  const drySlope = dryK === boilsK ? slope : idealSlope(r.model(), dryK)
  return withSlope(r, dryK, 'vapour', drySlope) - withSlope(r, boilsK, 'liquid', slope)
}

/** Enthalpy as {@link saturatedEnthalpy}, by the ideal gas's slope at the temperature. */
function withSlope(r: Refrigerant, temperatureK: number, phase: Phase, slope: number): number {
  const density = saturatedDensity(r, temperatureK, phase) / r.molarMass
  return enthalpyAt(r.model(), temperatureK, density, slope) / r.molarMass + r.raise.enthalpy
}

/** Glide in K at an absolute pressure in Pa: dew less bubble temperature; 0 for a pure substance. */
export function glide(r: Refrigerant, pressurePa: number): number {
  const width =
    saturationTemperature(r, pressurePa, 'dew') - saturationTemperature(r, pressurePa, 'bubble')
  if (width < -1e-3) {
    throw new CalcError('no-convergence', `Dew lies below bubble at ${showPa(pressurePa)}.`, {
      hint: 'This is a fault of the data, not of the input: please report it.',
    })
  }
  return Math.max(0, width)
}

/** The equation's own state at the density of the curve: its zero is not the IIR's. */
function saturatedState(r: Refrigerant, temperatureK: number, phase: Phase): MolarState {
  return stateAt(r.model(), temperatureK, saturatedDensity(r, temperatureK, phase) / r.molarMass)
}

function lineAt(r: Refrigerant, temperatureK: number, line: Line): LineCurve {
  const curve = r[line]
  if (temperatureK >= curve.fromK - EDGE_K && temperatureK <= curve.toK + EDGE_K) return curve
  throw temperatureRefusal(r, line, temperatureK)
}

const lineOf = (phase: Phase): Line => (phase === 'liquid' ? 'bubble' : 'dew')
