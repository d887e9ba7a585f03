/// <reference path="./psychrolib.d.ts" />
import psychrolib from 'psychrolib'
import { CalcError } from '../errors.ts'
import { ZERO_CELSIUS_K } from '../gas-constants.ts'
import { waterVapourPressure } from './water.ts'

// The library keeps one unit system for everybody: it is set here, once, and nothing else imports it.
psychrolib.SetUnitSystem(psychrolib.SI)

/** Air that cooling systems meet: the library’s own range is wider, its iterations are safe within this. */
const COLDEST_K = 233.15
const HOTTEST_K = 343.15
/** Rounding: −40 °C may come as 233.14999999999998 K. */
const EDGE_K = 1e-6
const DRIEST = 0.01
const LOWEST_PA = 20_000
const HIGHEST_PA = 120_000
/** Largest share of the barometer that the water vapour may have. */
const MOST_VAPOUR = 0.5

/** Moist air at one state, SI, for a mass of dry air. */
export interface MoistAir {
  readonly dryBulbK: number
  readonly wetBulbK: number
  readonly dewPointK: number
  /** 0 to 1 */
  readonly relativeHumidity: number
  /** kg water a kg dry air */
  readonly humidityRatio: number
  /** J a kg dry air, from dry air at 0 °C */
  readonly enthalpy: number
}

/**
 * State of moist air from its temperature and relative humidity.
 *
 * ASHRAE Handbook, Fundamentals (2017), chapter 1, by PsychroLib.
 *
 * @param dryBulbK - −40 °C to 70 °C, both included.
 * @param relativeHumidity - 0.01 to 1, both included.
 * @param pressurePa - 20 kPa to 120 kPa, both included.
 * @throws {CalcError} `out-of-range`.
 */
export function moistAir(dryBulbK: number, relativeHumidity: number, pressurePa: number): MoistAir {
  guard(dryBulbK, pressurePa)
  if (!(relativeHumidity >= DRIEST && relativeHumidity <= 1)) {
    throw new CalcError(
      'out-of-range',
      `A relative humidity of ${(100 * relativeHumidity).toFixed(1)} % is outside 1 to 100 %.`,
      { hint: 'Give the relative humidity of the air, such as 55 %.' },
    )
  }
  // the library silently floors the humidity once the vapour alone would exceed the barometer
  if (relativeHumidity * waterVapourPressure(dryBulbK) > MOST_VAPOUR * pressurePa) {
    throw new CalcError(
      'out-of-range',
      `Air at ${(dryBulbK - ZERO_CELSIUS_K).toFixed(1)} °C and ${(100 * relativeHumidity).toFixed(0)} % would be mostly steam at this barometer.`,
      { hint: 'Check temperature, humidity and altitude.' },
    )
  }
  return stateOf(
    dryBulbK,
    psychrolib.GetHumRatioFromRelHum(dryBulbK - ZERO_CELSIUS_K, relativeHumidity, pressurePa),
    pressurePa,
  )
}

/**
 * Relative humidity of air from its dry and wet bulb.
 *
 * @param wetBulbK - Not above the dry bulb.
 * @throws {CalcError} `out-of-range`, also for a wet bulb that the driest air does not reach.
 */
export function humidityAt(dryBulbK: number, wetBulbK: number, pressurePa: number): number {
  guard(dryBulbK, pressurePa)
  guard(wetBulbK, pressurePa)
  const found =
    wetBulbK > dryBulbK
      ? Number.NaN
      : psychrolib.GetRelHumFromTWetBulb(
          dryBulbK - ZERO_CELSIUS_K,
          wetBulbK - ZERO_CELSIUS_K,
          pressurePa,
        )
  if (found >= DRIEST) return Math.min(found, 1)
  throw new CalcError(
    'out-of-range',
    `No air has a wet bulb of ${(wetBulbK - ZERO_CELSIUS_K).toFixed(1)} °C at ${(dryBulbK - ZERO_CELSIUS_K).toFixed(1)} °C.`,
    { hint: 'The wet bulb is below the air temperature, and some 20 K at most.' },
  )
}

/**
 * The same air after a coil has cooled it: it keeps its water until it is saturated, then loses what is over.
 *
 * @param air - Air that goes in.
 * @param outletK - Dry bulb behind the coil, not above the inlet’s.
 */
export function cooledAir(air: MoistAir, outletK: number, pressurePa: number): MoistAir {
  guard(outletK, pressurePa)
  const full =
    waterVapourPressure(outletK) > MOST_VAPOUR * pressurePa
      ? air.humidityRatio
      : psychrolib.GetSatHumRatio(outletK - ZERO_CELSIUS_K, pressurePa)
  return stateOf(outletK, Math.min(air.humidityRatio, full), pressurePa)
}

function stateOf(dryBulbK: number, humidityRatio: number, pressurePa: number): MoistAir {
  const dryBulbC = dryBulbK - ZERO_CELSIUS_K
  return {
    dryBulbK,
    humidityRatio,
    // it takes a search, and few ask for it
    get wetBulbK() {
      return (
        psychrolib.GetTWetBulbFromHumRatio(dryBulbC, humidityRatio, pressurePa) + ZERO_CELSIUS_K
      )
    },
    dewPointK:
      psychrolib.GetTDewPointFromHumRatio(dryBulbC, humidityRatio, pressurePa) + ZERO_CELSIUS_K,
    relativeHumidity: Math.min(
      psychrolib.GetRelHumFromHumRatio(dryBulbC, humidityRatio, pressurePa),
      1,
    ),
    enthalpy: psychrolib.GetMoistAirEnthalpy(dryBulbC, humidityRatio),
  }
}

function guard(dryBulbK: number, pressurePa: number): void {
  if (!(dryBulbK >= COLDEST_K - EDGE_K && dryBulbK <= HOTTEST_K + EDGE_K)) {
    throw new CalcError(
      'out-of-range',
      `Air at ${(dryBulbK - ZERO_CELSIUS_K).toFixed(1)} °C is outside −40 to 70 °C.`,
      { hint: 'Give the temperature of the air itself, out of the sun.' },
    )
  }
  if (!(pressurePa >= LOWEST_PA && pressurePa <= HIGHEST_PA)) {
    throw new CalcError(
      'out-of-range',
      `Air at ${(pressurePa / 1000).toFixed(1)} kPa is outside 20 to 120 kPa.`,
      { hint: 'Give the barometric pressure at the place.' },
    )
  }
}
