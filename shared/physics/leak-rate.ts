import { GAS_CONSTANT } from '../gas-constants.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'

export const LEAK_RATE_SOURCES: readonly Source[] = [
  {
    id: 'ideal-gas-leak',
    title: 'Mass flow of a leak = pV flow × molar mass / (molar gas constant × temperature)',
    mark: 'computed',
    note: 'agrees with a vacuum maker’s printed pairs for R-134a at 25 °C: 3.32e-3 mbar·L/s is 430 g a year',
  },
  {
    id: 'leak-scaling',
    title:
      'A leak carries in proportion to the pressure difference and to 1/√(molar mass) when molecules pass one by one, to the difference of squared pressures over the viscosity when gas flows (textbook of vacuum technology)',
    mark: 'memory',
    note: 'the two give a band, not a value',
  },
  {
    id: 'vapour-viscosities',
    title:
      'Air and nitrogen are 1.2 (R-744) to 2.5 (R-600a) times as viscous as refrigerant vapours at 21 °C and 1 atm; R-134a 1.6, R-1234yf 1.5 (CoolProp 8.0.0)',
    mark: 'computed',
  },
]

/**
 * Mass that a pV flow of a gas carries, kg/s.
 *
 * @param leakRate - Pa·m³/s at `temperatureK`.
 * @param molarMass - kg/mol.
 */
export const massOfLeak = (leakRate: number, molarMass: number, temperatureK: number): number =>
  (leakRate * molarMass) / (GAS_CONSTANT * temperatureK)

/** How much more viscous the test gas is than a refrigerant vapour, from least to most. */
export const THINNER = [1.2, 2.5] as const

/** What drove the measured leak, and what drives the refrigerant later. */
interface Drive {
  /** Molar mass of the gas that was measured, kg/mol. */
  readonly measuredMolarMass: number
  /** Pressures on both sides while it was measured, Pa absolute. */
  readonly measuredHighPa: number
  readonly measuredLowPa: number
  /** Pressures on both sides with the refrigerant in, Pa absolute. */
  readonly restHighPa: number
  readonly restLowPa: number
}

/**
 * Band of the refrigerant that the same hole loses, kg/s: from free molecular to viscous flow.
 *
 * @param leakRate - Measured pV flow, Pa·m³/s.
 */
export function refrigerantLoss(
  leakRate: number,
  drive: Drive,
  r: Refrigerant,
  temperatureK: number,
): { readonly fromKgPerS: number; readonly toKgPerS: number } {
  const { measuredHighPa, measuredLowPa, restHighPa, restLowPa } = drive
  const difference = Math.max(measuredHighPa - measuredLowPa, 1)
  const squares = Math.max(measuredHighPa ** 2 - measuredLowPa ** 2, 1)
  const molecular =
    (Math.max(restHighPa - restLowPa, 0) / difference) *
    Math.sqrt(drive.measuredMolarMass / r.molarMass)
  const viscous = Math.max(restHighPa ** 2 - restLowPa ** 2, 0) / squares
  const flows = [molecular, ...THINNER.map((ratio) => viscous * ratio)].map((share) =>
    massOfLeak(leakRate * share, r.molarMass, temperatureK),
  )
  return { fromKgPerS: Math.min(...flows), toKgPerS: Math.max(...flows) }
}
