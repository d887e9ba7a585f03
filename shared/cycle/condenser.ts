import type { AirStream } from './air.ts'
import { approach, excessAfter, faceToReach, inSeries, meanExcess } from './exchange.ts'
import type { Fluid, Point, Saturation } from './fluid.ts'
import type { Coil } from './types.ts'
import { meanBoilingDensity } from './void-fraction.ts'

/** What a condenser makes of the gas that comes in. Heats in W. */
export interface Condensation {
  /** J/kg at the outlet. */
  readonly enthalpy: number
  /** Vapour by mass at the outlet: 0 where it leaves as liquid. */
  readonly quality: number
  /** Shares of the face: cooling gas, condensing, cooling liquid. Together 1. */
  readonly faces: { readonly gas: number; readonly condensing: number; readonly liquid: number }
  /** Face that condensing everything takes, less the whole: 0 when saturated liquid leaves. */
  readonly shortfall: number
  /** W taken up by the air, from the air's own side. */
  readonly airHeat: number
  /** kg held. */
  readonly mass: number
}

/**
 * A condenser with moving zones: gas cools to the dew line, condenses, and what face is left cools
 * the liquid. Explicit: no zone has to be searched for.
 *
 * Heat capacities are means: of the gas over its zone, of the liquid down to the air's temperature.
 * Nothing where the air is not colder than the refrigerant (`undefined`).
 */
export function condense(
  fluid: Fluid,
  coil: Coil,
  air: AirStream,
  at: Saturation,
  inlet: { readonly point: Point; readonly flow: number; readonly film: number },
): Condensation | undefined {
  const { point, flow, film } = inlet
  const { boilingRate, singleRate } = airRates(coil, air, film)
  const dewExcess = at.dewK - air.temperatureK
  const meanExcessK = at.meanK - air.temperatureK
  const bubbleExcess = at.bubbleK - air.temperatureK
  if (!(bubbleExcess > 0)) return undefined
  let airHeat = 0
  let mass = 0

  let gas = 0
  let start = point.enthalpy
  if (point.enthalpy > at.vapourEnthalpy) {
    const inExcess = point.temperatureK - air.temperatureK
    const rate = (flow * (point.enthalpy - at.vapourEnthalpy)) / (inExcess - dewExcess)
    const needed = faceToReach(inExcess, dewExcess, singleRate, rate)
    gas = Math.min(needed, 1)
    const outExcess = needed <= 1 ? dewExcess : excessAfter(inExcess, 1, singleRate, rate)
    airHeat += gas * singleRate * meanExcess(inExcess, outExcess)
    mass += gas * coil.volume * ((point.density + at.vapourDensity) / 2)
    start =
      needed <= 1 ? at.vapourEnthalpy : point.enthalpy - (rate * (inExcess - outExcess)) / flow
    if (needed > 1) {
      const shortfall = needed - 1 + (flow * at.latentHeat) / (boilingRate * meanExcessK)
      return {
        enthalpy: start,
        quality: 1,
        faces: { gas, condensing: 0, liquid: 0 },
        shortfall,
        airHeat,
        mass,
      }
    }
  }
  const startQuality = (start - at.liquidEnthalpy) / at.latentHeat
  const perFace = boilingRate * meanExcessK
  const needed = (flow * (start - at.liquidEnthalpy)) / perFace
  const shortfall = gas + needed - 1
  if (shortfall > 0) {
    const condensing = 1 - gas
    const enthalpy = start - (condensing * perFace) / flow
    const quality = (enthalpy - at.liquidEnthalpy) / at.latentHeat
    return {
      enthalpy,
      quality,
      faces: { gas, condensing, liquid: 0 },
      shortfall,
      airHeat: airHeat + condensing * perFace,
      mass: mass + condensing * coil.volume * meanBoilingDensity(startQuality, quality, at),
    }
  }
  const liquid = -shortfall
  const rate = flow * fluid.heatCapacityTowards(air.temperatureK, at, 'liquid')
  const outExcess = excessAfter(bubbleExcess, liquid, singleRate, rate)
  const enthalpy = at.liquidEnthalpy - (rate * (bubbleExcess - outExcess)) / flow
  // liquid thickens as it cools; half of that stands for the mean
  return {
    enthalpy,
    quality: 0,
    faces: { gas, condensing: needed, liquid },
    shortfall,
    airHeat: airHeat + needed * perFace + liquid * singleRate * meanExcess(bubbleExcess, outExcess),
    mass:
      mass +
      needed * coil.volume * meanBoilingDensity(startQuality, 0, at) +
      liquid * coil.volume * at.liquidDensity,
  }
}

/** W/K that the air takes up over the whole face, for each K of excess: two phases, and one. */
export function airRates(
  coil: Coil,
  air: AirStream,
  film: number,
): { readonly boilingRate: number; readonly singleRate: number } {
  const inside = coil.refrigerantConductance * film
  const rate = (share: number) =>
    air.capacityRate * approach(inSeries(inside * share, coil.airConductance), air.capacityRate)
  return { boilingRate: rate(1), singleRate: rate(coil.singlePhaseShare) }
}
