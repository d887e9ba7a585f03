import { type AirStream, humidityOf, saturatedAirEnthalpy, saturatedAirTemperature } from './air.ts'
import { airRates } from './condenser.ts'
import { approach, excessAfter, inSeries, meanExcess } from './exchange.ts'
import type { Fluid, Saturation } from './fluid.ts'
import type { Coil } from './types.ts'
import { meanBoilingDensity } from './void-fraction.ts'

/** What an evaporator makes of what comes in. Heats in W. */
export interface Evaporation {
  /** J/kg at the outlet. */
  readonly enthalpy: number
  /** Share of the face on which it boils; what is left superheats. */
  readonly boilingFace: number
  /** W given by the air, from the air's own side. */
  readonly airHeat: number
  /** What a coil that boils all over would give. */
  readonly boiling: BoilingHeat
  /** kg held. */
  readonly mass: number
}

/** Least span, K, over which the slope of the saturated-air line is taken. */
const LEAST_SPAN_K = 1e-3
const ROUNDS = 2

/** How the air gives its heat to a boiling zone: W over the whole face, dry or wet. */
interface BoilingHeat {
  readonly whole: number
  /** Water condenses on the coil. */
  readonly wet: boolean
}

/**
 * Heat of a coil that boils all over, at an even temperature: the larger of the dry and the wet
 * answer, for a coil that is partly wet gives a little more than either (Braun's approximation).
 *
 * Wet: with Lewis number 1 the film of air passes dQ = (UA_o/c_p)(h − h_s,surface) and the wall
 * dQ = (UA_i/c_s)(h_s,surface − h_s,T), c_s the slope of saturated-air enthalpy over temperature;
 * so Q = ṁ_a (1 − exp(−UA/ṁ_a)) (h_in − h_s,T) with 1/UA = c_s/UA_i + c_p/UA_o. c_s is taken
 * between the refrigerant's temperature and that of the fins.
 */
export function boilingHeat(coil: Coil, air: AirStream, kelvin: number, film: number): BoilingHeat {
  const { boilingRate } = airRates(coil, air, film)
  const dry = boilingRate * (air.temperatureK - kelvin)
  if (!(kelvin < air.dewPointK)) return { whole: dry, wet: false }
  const saturated = saturatedAirEnthalpy(kelvin, air.barometerPa)
  // the fins are first taken to reach the dew point, then to be where the heat of that puts them
  let spanK = air.dewPointK - kelvin
  let wet = 0
  for (let round = 0; round < ROUNDS; round += 1) {
    const span = Math.max(spanK, LEAST_SPAN_K)
    const slope = (saturatedAirEnthalpy(kelvin + span, air.barometerPa) - saturated) / span
    const conductance = inSeries(
      (coil.refrigerantConductance * film) / slope,
      coil.airConductance / air.heatCapacity,
    )
    wet = air.dryFlow * approach(conductance, air.dryFlow) * (air.enthalpy - saturated)
    spanK = wet / (coil.refrigerantConductance * film)
  }
  return wet > dry ? { whole: wet, wet: true } : { whole: dry, wet: false }
}

/** Refrigerant boils, then superheats over what face is left. `undefined` where the air is colder. */
export function evaporate(
  fluid: Fluid,
  coil: Coil,
  air: AirStream,
  at: Saturation,
  inlet: { readonly enthalpy: number; readonly flow: number; readonly film: number },
): Evaporation | undefined {
  const { flow, film } = inlet
  const excess = air.temperatureK - at.dewK
  if (!(excess > 0)) return undefined
  const boiling = boilingHeat(coil, air, at.meanK, film)
  const { whole } = boiling
  const needed = (flow * (at.vapourEnthalpy - inlet.enthalpy)) / whole
  const from = Math.max(0, (inlet.enthalpy - at.liquidEnthalpy) / at.latentHeat)
  if (needed >= 1) {
    const enthalpy = inlet.enthalpy + whole / flow
    const to = (enthalpy - at.liquidEnthalpy) / at.latentHeat
    return {
      enthalpy,
      boilingFace: 1,
      airHeat: whole,
      boiling,
      mass: coil.volume * meanBoilingDensity(from, Math.max(to, from), at),
    }
  }
  const boilingFace = Math.max(needed, 0)
  const { singleRate } = airRates(coil, air, film)
  const heatCapacity = fluid.heatCapacityTowards(air.temperatureK, at, 'vapour')
  const rate = flow * heatCapacity
  const outExcess = excessAfter(excess, 1 - boilingFace, singleRate, rate)
  const outK = air.temperatureK - outExcess
  return {
    enthalpy: at.vapourEnthalpy + heatCapacity * (outK - at.dewK),
    boilingFace,
    airHeat: boilingFace * whole + (1 - boilingFace) * singleRate * meanExcess(excess, outExcess),
    boiling,
    mass:
      boilingFace * coil.volume * meanBoilingDensity(Math.min(from, 1), 1, at) +
      // superheated vapour thins out in proportion to its temperature, near enough
      (1 - boilingFace) * coil.volume * at.vapourDensity * (0.5 + (0.5 * at.dewK) / outK),
  }
}

/** Air as it leaves the coil. */
export interface LeavingAir {
  /** Mixed from the zones, K. */
  readonly temperatureK: number
  /** kg water a kg dry air. */
  readonly humidityRatio: number
  /** Of the fins where it boils, K: what ice forms on. */
  readonly surfaceK: number
  /** What a thermostat's probe feels among the fins, K. */
  readonly probeK: number
}

/** Boiling face below which the probe stands among dry fins alone, and above which among boiling ones: assumed. */
const PROBE_FROM = 0.45
const PROBE_TO = 0.75

/**
 * Fins of a zone that boils, K: the surface is where the line from the air's state through its
 * outlet meets saturation, h_s = h_in − (h_in − h_out)/(1 − e^(−NTU_o)) with wet fins, the same for
 * temperature with dry ones.
 *
 * @param nearK - Where it may be.
 */
export function surfaceTemperature(
  coil: Coil,
  air: AirStream,
  { whole, wet }: BoilingHeat,
  nearK?: number,
): number {
  const reach = approach(coil.airConductance, air.capacityRate)
  return wet
    ? saturatedAirTemperature(air.enthalpy - whole / air.dryFlow / reach, air.barometerPa, nearK)
    : air.temperatureK - whole / air.capacityRate / reach
}

/** The air behind the coil, mixed from behind the boiling and the superheating part of its face. */
export function leavingAir(coil: Coil, air: AirStream, evaporation: Evaporation): LeavingAir {
  const { boilingFace, airHeat, boiling } = evaporation
  const { whole, wet } = boiling
  const surfaceK = surfaceTemperature(coil, air, boiling)
  const reach = approach(coil.airConductance, air.capacityRate)
  const boiledK = air.temperatureK - reach * (air.temperatureK - surfaceK)
  const boiledHumidity = wet
    ? Math.min(air.humidityRatio, humidityOf(air.enthalpy - whole / air.dryFlow, boiledK))
    : air.humidityRatio
  const superheated = airHeat - boilingFace * whole
  const share = Math.min(1, Math.max(0, (boilingFace - PROBE_FROM) / (PROBE_TO - PROBE_FROM)))
  const dryK = air.temperatureK - superheated / (air.capacityRate * Math.max(1 - boilingFace, 1e-9))
  return {
    temperatureK:
      boilingFace * boiledK + (1 - boilingFace) * air.temperatureK - superheated / air.capacityRate,
    humidityRatio: boilingFace * boiledHumidity + (1 - boilingFace) * air.humidityRatio,
    surfaceK,
    probeK: share === 1 ? surfaceK : share * surfaceK + (1 - share) * dryK,
  }
}
