import { CalcError } from '../errors.ts'
import { flash, type Work } from '../substance/flash.ts'
import type { TwoPhase } from '../substance/two-phase.ts'
import { blendOf } from './blend.ts'
import type { Refrigerant } from './refrigerant.ts'
import { saturatedDensity, saturationTemperature } from './saturation.ts'

/** Where on the two-phase region: at a temperature in K, or at an absolute pressure in Pa. */
export type TwoPhaseAt = { readonly temperatureK: number } | { readonly pressurePa: number }

/** Relative; the pressure asked for is met to this. */
const NEAR_ENOUGH = 1e-9
/** The curves that bound the search are good to this in pressure. */
const CURVE_ERROR = 1e-4
const MOST_STEPS = 30

/**
 * Density in kg/m³ of liquid and vapour together, by the quality (share of the mass that is vapour).
 *
 * A pure refrigerant: 1 / (x/ρ″ + (1−x)/ρ′). A blend is flashed: its liquid keeps the heavier parts
 * and its vapour the lighter ones, so that the densities of its bubble and dew lines would come out
 * up to 5 % too heavy.
 *
 * @param quality - 0 to 1.
 * @throws {CalcError} `out-of-range` for another quality; as saturation does; `no-convergence`.
 */
export function twoPhaseDensity(
  r: Refrigerant,
  at: TwoPhaseAt,
  quality: number,
  work: Work = { solves: 0 },
): number {
  if (!(quality >= 0 && quality <= 1)) {
    throw new CalcError('out-of-range', 'A quality lies between 0 and 100 %.', {
      hint: '0 % is all liquid, 100 % all vapour.',
    })
  }
  const ends = (line: 'bubble' | 'dew') =>
    'temperatureK' in at ? at.temperatureK : saturationTemperature(r, at.pressurePa, line)
  const [boils, dry] = [ends('bubble'), ends('dew')]
  const liquid = saturatedDensity(r, boils, 'liquid')
  const vapour = saturatedDensity(r, dry, 'vapour')
  const blend = blendOf(r)
  if (blend === undefined) return 1 / (quality / vapour + (1 - quality) / liquid)
  if (quality === 0) return liquid
  if (quality === 1) return vapour
  const { fluid, z } = blend
  const split = (temperatureK: number, near?: TwoPhase) =>
    flash(fluid, z, temperatureK, { quality }, edgesAt(r, temperatureK), near, work)
  const density = ({ liquidVolume, vapourVolume }: TwoPhase) =>
    r.molarMass / (liquidVolume + vapourVolume)
  if ('temperatureK' in at) return density(split(at.temperatureK))
  return density(splitAtPressure(split, at.pressurePa, quality, boils, dry))
}

/** The split at which this quality has the pressure: by secants of ln p, between bubble and dew temperature. */
function splitAtPressure(
  split: (temperatureK: number, near?: TwoPhase) => TwoPhase,
  pressurePa: number,
  quality: number,
  boils: number,
  dry: number,
): TwoPhase {
  const gap = ({ vapour }: TwoPhase) => Math.log(vapour.pressurePa / pressurePa)
  let temperatureK = boils + quality * (dry - boils)
  let here = split(temperatureK)
  // dln p/dT of a refrigerant is 2 to 4 % a kelvin: enough for the first step
  let slope = 0.03
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const off = gap(here)
    if (Math.abs(off) < NEAR_ENOUGH) return here
    const nextK = Math.min(Math.max(temperatureK - off / slope, boils), dry)
    // at an end of the region the curves' own error is left, and no step
    if (nextK === temperatureK && Math.abs(off) < CURVE_ERROR) return here
    if (nextK === temperatureK) break
    const next = split(nextK, here)
    slope = (gap(next) - off) / (nextK - temperatureK)
    temperatureK = nextK
    here = next
  }
  throw new CalcError('no-convergence', 'No temperature was found for this pressure and quality.')
}

const edgesAt = (r: Refrigerant, temperatureK: number) => ({
  bubble: saturatedDensity(r, temperatureK, 'liquid') / r.molarMass,
  dew: saturatedDensity(r, temperatureK, 'vapour') / r.molarMass,
})
