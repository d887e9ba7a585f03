import { CalcError } from '../errors.ts'
import { DRY_AIR_GAS_CONSTANT } from '../gas-constants.ts'
import { absolutePressure, gaugePressure, type Quantity } from './quantity.ts'

/** Standard atmosphere at sea level, Pa (US Standard Atmosphere 1976; ISO 2533:1975). */
export const SEA_LEVEL_PA = 101_325
const SEA_LEVEL_K = 288.15
const LAPSE_K_PER_M = 0.0065
const GRAVITY = 9.80665
const LOWEST_M = -1_000
const HIGHEST_M = 11_000

/**
 * Barometric pressure of the standard atmosphere.
 *
 * @param altitudeM - Height above sea level, m, −1000 to 11 000 (both included).
 * @returns Pressure, Pa absolute.
 * @throws {CalcError} `out-of-range` outside the troposphere.
 * @see US Standard Atmosphere 1976 (NOAA-S/T 76-1562), equation 33a; ISO 2533:1975.
 */
export function standardAtmosphere(altitudeM: number): number {
  if (!(altitudeM >= LOWEST_M && altitudeM <= HIGHEST_M)) {
    throw new CalcError(
      'out-of-range',
      `An altitude of ${altitudeM} m is outside ${LOWEST_M} to ${HIGHEST_M} m.`,
      {
        hint: 'Give the height above sea level, or the barometric pressure itself (not reduced to sea level).',
      },
    )
  }
  const exponent = GRAVITY / (DRY_AIR_GAS_CONSTANT * LAPSE_K_PER_M)
  return SEA_LEVEL_PA * (1 - (LAPSE_K_PER_M * altitudeM) / SEA_LEVEL_K) ** exponent
}

/** A pressure as a gauge or an absolute instrument reads it. */
export type PressureReading = Quantity<'gaugePressure' | 'absolutePressure'>

/**
 * Absolute pressure of a reading.
 *
 * @param reading - Gauge or absolute.
 * @param barometerPa - Pressure of the surrounding air, Pa.
 * @throws {CalcError} `out-of-range` when the reading lies at or below a perfect vacuum.
 */
export function toAbsolute(
  reading: PressureReading,
  barometerPa: number,
): Quantity<'absolutePressure'> {
  const pressurePa = reading.kind === 'gaugePressure' ? reading.si + barometerPa : reading.si
  if (!(pressurePa > 0)) {
    throw new CalcError(
      'out-of-range',
      `The reading is at or below a perfect vacuum: at a barometer of ${(barometerPa / 1000).toFixed(1)} kPa a gauge cannot read below ${(-barometerPa / 1000).toFixed(1)} kPa g (${absolutePressure(barometerPa).to('inHg abs').toFixed(2)} inHg vac).`,
      { hint: 'Check the sign, the unit (inHg vac or psig) and the altitude.' },
    )
  }
  return absolutePressure(pressurePa, reading.plusMinus).in(
    reading.kind === 'absolutePressure' ? reading.shownIn : undefined,
  )
}

/** What a gauge shows for an absolute pressure (Pa) under a barometer (Pa). */
export function toGauge(
  pressurePa: number,
  barometerPa: number,
  plusMinus?: number,
): Quantity<'gaugePressure'> {
  return gaugePressure(pressurePa - barometerPa, plusMinus)
}
