import { DRY_AIR_MOLAR_MASS, GAS_CONSTANT } from '../gas-constants.ts'
import type { Source } from '../sources.ts'
import type { Hose } from './hose.ts'

export interface Gas {
  readonly name: string
  /** kg/mol */
  readonly molarMass: number
  /** Pa·s near room temperature */
  readonly viscosity: number
}

/** Molar mass: US Standard Atmosphere 1976. Viscosity at 21 °C: computed, Lemmon & Jacobsen 2004. */
export const AIR: Gas = { name: 'air', molarMass: DRY_AIR_MOLAR_MASS, viscosity: 18.2e-6 }
/** Viscosity of saturated vapour at 21 °C: computed, IAPWS R12-08. */
export const WATER_VAPOUR: Gas = {
  name: 'water vapour',
  molarMass: 0.018015268,
  viscosity: 9.57e-6,
}

export const FLOW_SOURCES: readonly Source[] = [
  {
    id: 'tube-conductance',
    title:
      'Conductance of a long round tube: laminar 135 D⁴ p/L and molecular 12.1 D³/L (air at 20 °C, litres per second, cm, mbar at the mean pressure)',
    mark: 'verified',
    url: 'https://ja.scribd.com/document/343359118/Conductance',
    note: 'computed here from the kinetic and Poiseuille forms, which reproduce both constants',
  },
  {
    id: 'transition-flow-sum',
    title:
      'Flow between laminar and molecular: the sum of both conductances as a simple approximation; it matters little for pump-down times (vacuum technology textbook)',
    mark: 'secondary',
  },
  {
    id: 'blasius-friction',
    title: 'H. Blasius, friction factor of a smooth pipe, 0.3164 Re^-1/4 (Re 4000 to 100 000)',
    mark: 'secondary',
    url: 'https://tailieu.vn/doc/compressible-flow-friction-162422.html',
  },
]

/** Laminar flow: throughput per mean pressure and pressure drop, m³/(s·Pa) (Poiseuille). */
export const laminarFactor = ({ lengthM, boreM }: Hose, { viscosity }: Gas) =>
  (Math.PI * boreM ** 4) / (128 * viscosity * lengthM)

/** Molecular flow: conductance of a long tube, m³/s (Knudsen): (π D³/12 L) times the mean molecular speed. */
export const molecularConductance = ({ lengthM, boreM }: Hose, gas: Gas, temperatureK: number) =>
  ((Math.PI * boreM ** 3) / (12 * lengthM)) *
  Math.sqrt((8 * GAS_CONSTANT * temperatureK) / (Math.PI * gas.molarMass))

/**
 * Pressure at the inlet of a hose that carries a throughput.
 *
 * Laminar and molecular flow share the pressure drop by adding their conductances; where turbulent
 * friction asks for more, it rules. Isothermal; bends, fittings and the speed-up at the inlet are left out.
 *
 * @param throughput - Pa·m³/s, not negative.
 * @param outletPa - Pressure at the pump end, Pa absolute.
 * @returns Pa absolute, never below `outletPa`.
 */
export function inletPressure(
  hose: Hose,
  gas: Gas,
  temperatureK: number,
  throughput: number,
  outletPa: number,
): number {
  const half = laminarFactor(hose, gas) / 2
  const molecular = molecularConductance(hose, gas, temperatureK)
  // half·(p² − outlet²) + molecular·(p − outlet) = throughput, written for the rise p − outlet
  const linear = 2 * half * outletPa + molecular
  const smooth = (2 * throughput) / (linear + Math.sqrt(linear ** 2 + 4 * half * throughput))
  const squares = 2 * turbulentHalfSquares(hose, gas, temperatureK, throughput)
  // against a perfect vacuum nothing over nothing would be no number
  const turbulent = squares === 0 ? 0 : squares / (Math.sqrt(outletPa ** 2 + squares) + outletPa)
  return outletPa + Math.max(smooth, turbulent)
}

/** (p1² − p2²)/2 of isothermal turbulent flow, Pa²: Darcy-Weisbach with the Blasius friction factor. */
function turbulentHalfSquares(
  { lengthM, boreM }: Hose,
  { molarMass, viscosity }: Gas,
  temperatureK: number,
  throughput: number,
): number {
  const specific = (GAS_CONSTANT * temperatureK) / molarMass
  const massFlux = throughput / specific / ((Math.PI * boreM ** 2) / 4)
  const reynolds = (massFlux * boreM) / viscosity
  if (reynolds < 1) return 0
  const friction = 0.3164 * reynolds ** -0.25
  return (friction * lengthM * massFlux ** 2 * specific) / (2 * boreM)
}
