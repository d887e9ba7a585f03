import { CalcError } from '../../errors.ts'
import { DRY_AIR_MOLAR_MASS, GAS_CONSTANT } from '../../gas-constants.ts'
import { propagate, type Uncertain } from '../../quantity/index.ts'
import { type Refrigerant, saturatedDensity, saturationPressure } from '../../refrigerant/index.ts'

/** A figure that cannot be below zero, with the band of what was measured. */
const notNegative = ({ si, plusMinus }: Uncertain): Uncertain => ({
  si: Math.max(si, 0),
  plusMinus,
})

/** Pressure above saturation (of the bubble line), Pa, before it is called air: may be negative. */
export const excessPressure = (r: Refrigerant, pressurePa: Uncertain, temperatureK: Uncertain) =>
  propagate(
    [pressurePa, temperatureK],
    (pa, kelvin) => pa - saturationPressure(r, kelvin, 'bubble'),
  )

/** Share of air in the vapour by amount: its partial pressure over the whole (Dalton). */
export const airFraction = (r: Refrigerant, pressurePa: Uncertain, temperatureK: Uncertain) =>
  notNegative(
    propagate(
      [pressurePa, temperatureK],
      (pa, kelvin) => 1 - saturationPressure(r, kelvin, 'bubble') / pa,
    ),
  )

/**
 * Volume above the liquid, m³.
 *
 * From ρ′·V′ + ρ″·(V − V′) = m. Without the contents the whole container is taken, which makes the
 * mass of air an upper bound.
 *
 * @throws {CalcError} `bad-input` when the contents do not fit the container as liquid.
 */
export function vapourSpace(
  r: Refrigerant,
  temperatureK: number,
  containerM3: number,
  contentsKg: number | undefined,
): number {
  if (contentsKg === undefined) return containerM3
  const liquid = saturatedDensity(r, temperatureK, 'liquid')
  const vapour = saturatedDensity(r, temperatureK, 'vapour')
  if (contentsKg > liquid * containerM3) {
    throw new CalcError(
      'bad-input',
      'The contents are more than the container holds full of liquid.',
      {
        hint: 'Check contents (gross less tare) and container volume. If they are right, keep away from it: it is overfull.',
        path: ['contents'],
      },
    )
  }
  return Math.min((liquid * containerM3 - contentsKg) / (liquid - vapour), containerM3)
}

/** Mass of air in the vapour space, kg, by the ideal gas law at its partial pressure. */
export function airMass(excessPa: Uncertain, temperatureK: number, spaceM3: number): Uncertain {
  const perPascal = (spaceM3 * DRY_AIR_MOLAR_MASS) / (GAS_CONSTANT * temperatureK)
  return {
    si: Math.max(excessPa.si, 0) * perPascal,
    plusMinus: excessPa.plusMinus === undefined ? undefined : excessPa.plusMinus * perPascal,
  }
}
