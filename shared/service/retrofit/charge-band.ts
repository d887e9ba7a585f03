import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { type Comparison, compareWithBand, type Quantity, quantity } from '../../quantity/index.ts'
import { type Refrigerant, saturatedDensity } from '../../refrigerant/index.ts'

interface ChargeBand {
  /** Common practice by mass fraction, kg. */
  readonly lowKg: number
  readonly highKg: number
  /** The fixed-offset formula, kg; undefined outside the charges for which it is in use. */
  readonly formulaKg: number | undefined
  readonly formulaRange: Comparison
  /** Ratio of the saturated liquid densities, new over old. */
  readonly densityRatio: number
  readonly sameVolumeKg: number
  /** Least and most of all these, kg. */
  readonly spreadKg: readonly [number, number]
}

/**
 * Charge of R-134a in a system made for R-12.
 *
 * Three rules stand side by side, since none has an authoritative source: a mass fraction, a formula with a
 * fixed offset (which dominates small charges, so that it is left out below 2 and above 5 lb), and the
 * liquid volume of the old charge.
 *
 * @param original - Charge of R-12 on the label.
 */
export function chargeBand(
  original: Quantity<'mass'>,
  from: Refrigerant,
  to: Refrigerant,
): ChargeBand {
  const { charge } = data
  const massOf = ({ value, unit }: { value: number; unit: string }) =>
    quantity('mass', value, unit).si
  const temperatureK = quantity('temperature', charge.densitiesAt.value, charge.densitiesAt.unit).si
  const densityRatio =
    saturatedDensity(to, temperatureK, 'liquid') / saturatedDensity(from, temperatureK, 'liquid')
  const formulaRange = compareWithBand(
    original,
    massOf(charge.formulaFrom),
    massOf(charge.formulaTo),
  )
  const formulaKg =
    formulaRange === 'inside'
      ? charge.formulaFraction * original.si - massOf(charge.formulaOffset)
      : undefined
  const lowKg = charge.lowFraction * original.si
  const highKg = charge.highFraction * original.si
  const sameVolumeKg = densityRatio * original.si
  const all = [lowKg, highKg, sameVolumeKg, ...(formulaKg === undefined ? [] : [formulaKg])]
  return {
    lowKg,
    highKg,
    formulaKg,
    formulaRange,
    densityRatio,
    sameVolumeKg,
    spreadKg: [Math.min(...all), Math.max(...all)],
  }
}
