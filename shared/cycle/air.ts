import { DRY_AIR_GAS_CONSTANT, ZERO_CELSIUS_K } from '../gas-constants.ts'
import { type MoistAir, moistAir } from '../physics/moist-air.ts'
import { waterVapourPressure } from '../physics/water.ts'

/** Molar mass of water over that of dry air. */
const WATER_TO_AIR = 0.621945
/** J/(kg·K) and J/kg: moist-air enthalpy as in ASHRAE Fundamentals 2017, chapter 1, equation 30. */
const DRY_HEAT_CAPACITY = 1006
const VAPOUR_HEAT_CAPACITY = 1860
const VAPOUR_ENTHALPY = 2.501e6

/** Air on its way into a coil. */
export interface AirStream {
  readonly temperatureK: number
  readonly barometerPa: number
  /** kg dry air a second. */
  readonly dryFlow: number
  /** W/K of the stream, with its vapour. */
  readonly capacityRate: number
  /** J/K a kg dry air. */
  readonly heatCapacity: number
  /** J a kg dry air. */
  readonly enthalpy: number
  readonly humidityRatio: number
  readonly dewPointK: number
}

/** A stream of moist air from its volume flow in m³/s. */
export function airStream(
  temperatureK: number,
  humidity: number,
  barometerPa: number,
  volumeFlow: number,
): AirStream {
  const air: MoistAir = moistAir(temperatureK, humidity, barometerPa)
  const heatCapacity = DRY_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * air.humidityRatio
  const dryFlow =
    (volumeFlow * barometerPa) /
    (DRY_AIR_GAS_CONSTANT * temperatureK * (1 + air.humidityRatio / WATER_TO_AIR))
  return {
    temperatureK,
    barometerPa,
    dryFlow,
    capacityRate: dryFlow * heatCapacity,
    heatCapacity,
    enthalpy: enthalpyOf(temperatureK, air.humidityRatio),
    humidityRatio: air.humidityRatio,
    dewPointK: air.dewPointK,
  }
}

/** kg water a kg dry air when saturated. */
function saturatedHumidity(temperatureK: number, barometerPa: number): number {
  const vapour = waterVapourPressure(temperatureK)
  return (WATER_TO_AIR * vapour) / (barometerPa - vapour)
}

/** J a kg dry air when saturated, from dry air at 0 °C. */
export function saturatedAirEnthalpy(temperatureK: number, barometerPa: number): number {
  return enthalpyOf(temperatureK, saturatedHumidity(temperatureK, barometerPa))
}

const COLDEST_K = 200
const HOTTEST_K = 340
const USUAL_K = 285
/** K over which the first slope is taken. */
const SPAN_K = 0.01

/**
 * K at which saturated air has an enthalpy: Newton's step, then secants, held in a bracket, for it
 * rises ever faster.
 *
 * @param nearK - Where it may be.
 */
export function saturatedAirTemperature(
  enthalpy: number,
  barometerPa: number,
  nearK = USUAL_K,
): number {
  const gapAt = (kelvin: number) => saturatedAirEnthalpy(kelvin, barometerPa) - enthalpy
  let [low, high] = [COLDEST_K, HOTTEST_K]
  let t = nearK
  let gap = gapAt(t)
  let slope = (gapAt(t + SPAN_K) - gap) / SPAN_K
  for (let step = 0; step < 60; step += 1) {
    if (gap > 0) high = t
    else low = t
    let next = t - gap / slope
    if (!(next > low && next < high)) next = (low + high) / 2
    if (Math.abs(next - t) < 1e-9) return next
    const nextGap = gapAt(next)
    slope = (nextGap - gap) / (next - t)
    t = next
    gap = nextGap
  }
  return t
}

/** kg water a kg dry air of air that has an enthalpy at a temperature. */
export function humidityOf(enthalpy: number, temperatureK: number): number {
  const celsius = temperatureK - ZERO_CELSIUS_K
  return (
    (enthalpy - DRY_HEAT_CAPACITY * celsius) / (VAPOUR_ENTHALPY + VAPOUR_HEAT_CAPACITY * celsius)
  )
}

function enthalpyOf(temperatureK: number, humidityRatio: number): number {
  const celsius = temperatureK - ZERO_CELSIUS_K
  return (
    DRY_HEAT_CAPACITY * celsius + humidityRatio * (VAPOUR_ENTHALPY + VAPOUR_HEAT_CAPACITY * celsius)
  )
}
