import { CalcError } from '../errors.ts'
import { flash, type Work } from '../substance/flash.ts'
import { pressure } from '../substance/state.ts'
import type { TwoPhase } from '../substance/two-phase.ts'
import { blendOf } from './blend.ts'
import type { Refrigerant } from './refrigerant.ts'
import { showPa, temperatureRefusal } from './refusal.ts'
import { saturatedDensity, saturationPressure } from './saturation.ts'

/** What a closed space of known mass and volume holds at a temperature, at equilibrium. */
export interface Contents {
  /** `liquid-full`: no room for vapour is left, and each kelvin more raises the pressure by bars. */
  readonly holds: 'two-phase' | 'vapour' | 'liquid-full' | 'supercritical'
  /** Pa absolute; undefined when full of liquid, where a thousandth of the mass moves it by bars. */
  readonly pressurePa?: number | undefined
  /** Share of the mass that is vapour, 0 to 1. */
  readonly quality: number
  /** Share of the volume that is liquid, 0 to 1. */
  readonly liquidShare: number
  /** The phases of a blend: where the next flash near by starts. */
  readonly split?: TwoPhase | undefined
}

/** Above this multiple of its critical temperature no mixture here condenses at any pressure. */
const NEVER_LIQUID = 1.02

/**
 * What a refrigerant of a density (mass over inner volume, kg/m³) is at a temperature in K.
 *
 * A pure refrigerant's pressure is that of its line; a blend is flashed, since its pressure runs
 * from bubble to dew as the liquid goes. Oil and air are left out.
 *
 * @param near - Contents of the same refrigerant near by, to start from.
 * @param work - Counts the equilibrium solves: three at first, one beside a state near by.
 * @throws {CalcError} `out-of-range`, `below-triple` outside the data or too near the critical
 *   point; `no-convergence`.
 */
export function contentsAt(
  r: Refrigerant,
  temperatureK: number,
  densityKgPerM3: number,
  near?: Contents,
  work: Work = { solves: 0 },
): Contents {
  if (!(densityKgPerM3 > 0 && densityKgPerM3 < Infinity)) {
    throw new CalcError('out-of-range', 'Nothing is in it, or it has no volume.', {
      hint: 'Give the mass of the contents and the inner volume, both above zero.',
    })
  }
  const beyond = r.criticalTemperatureK * (blendOf(r) ? NEVER_LIQUID : 1)
  if (temperatureK >= beyond && temperatureK <= r.equationMaximumK) {
    return onePhase(r, 'supercritical', temperatureK, densityKgPerM3)
  }
  if (temperatureK > r.maximumTemperatureK) throw temperatureRefusal(r, 'bubble', temperatureK)
  const liquid = saturatedDensity(r, temperatureK, 'liquid')
  const vapour = saturatedDensity(r, temperatureK, 'vapour')
  if (densityKgPerM3 >= liquid) return { holds: 'liquid-full', quality: 0, liquidShare: 1 }
  if (densityKgPerM3 <= vapour) return onePhase(r, 'vapour', temperatureK, densityKgPerM3)
  const blend = blendOf(r)
  if (blend === undefined) {
    const liquidShare = (densityKgPerM3 - vapour) / (liquid - vapour)
    return {
      holds: 'two-phase',
      pressurePa: saturationPressure(r, temperatureK, 'bubble'),
      quality: ((1 - liquidShare) * vapour) / densityKgPerM3,
      liquidShare,
    }
  }
  const m = r.molarMass
  const split = flash(
    blend.fluid,
    blend.z,
    temperatureK,
    { density: densityKgPerM3 / m },
    { bubble: liquid / m, dew: vapour / m },
    near?.split,
    work,
  )
  const space = split.liquidVolume + split.vapourVolume
  const { vapour: gas, vapourVolume } = split
  const vapourMass = gas.x.reduce(
    (sum, y, i) => sum + y * (blend.fluid.molarMasses[i] as number),
    0,
  )
  return {
    holds: 'two-phase',
    pressurePa: gas.pressurePa,
    quality: (vapourVolume * gas.density * vapourMass) / m,
    liquidShare: split.liquidVolume / space,
    split,
  }
}

function onePhase(
  r: Refrigerant,
  holds: 'vapour' | 'supercritical',
  temperatureK: number,
  densityKgPerM3: number,
): Contents {
  const pressurePa = pressure(r.model(), temperatureK, densityKgPerM3 / r.molarMass)
  if (!(pressurePa <= r.equationMaximumPa)) {
    throw new CalcError(
      'out-of-range',
      `So much ${r.info.id} in so little space is above ${showPa(r.equationMaximumPa)}, where its equation of state ends.`,
      { hint: 'Check the mass of the contents and the inner volume.' },
    )
  }
  return { holds, pressurePa, quality: 1, liquidShare: 0 }
}
