import { DRY_AIR_MOLAR_MASS, GAS_CONSTANT } from '../../gas-constants.ts'
import type { AtRest } from '../../physics/at-rest.ts'
import { type Uncertain, widthOf } from '../../quantity/index.ts'

/**
 * Pressure above that of the refrigerant alone, Pa, which may be air: over the given contents' own
 * pressure, else over the bubble line, the most that the refrigerant can have. May be negative.
 *
 * @returns undefined where the contents fill the volume, or nothing can be expected of them.
 */
export function excessPressure(found: AtRest, pressure: Uncertain): Uncertain | undefined {
  const alone = found.from === 'contents' ? found.expected : found.bubble
  if (alone === undefined) return undefined
  return {
    si: pressure.si - alone.si,
    plusMinus: Math.hypot(widthOf(pressure), widthOf(alone)),
  }
}

/** Share of air in the vapour by amount: its partial pressure over the whole (Dalton). */
export function airShare(excess: Uncertain, pressure: Uncertain): Uncertain {
  const alone = pressure.si - excess.si
  const ofAlone = Math.sqrt(Math.max(widthOf(excess) ** 2 - widthOf(pressure) ** 2, 0))
  return {
    si: Math.max(excess.si, 0) / pressure.si,
    // share = 1 − alone ÷ pressure
    plusMinus: Math.hypot((alone * widthOf(pressure)) / pressure.si ** 2, ofAlone / pressure.si),
  }
}

/** Mass of air in the vapour space, kg, by the ideal gas law at its partial pressure. */
export function airMass(excessPa: Uncertain, temperatureK: number, spaceM3: number): Uncertain {
  const perPascal = (spaceM3 * DRY_AIR_MOLAR_MASS) / (GAS_CONSTANT * temperatureK)
  return {
    si: Math.max(excessPa.si, 0) * perPascal,
    plusMinus: widthOf(excessPa) * perPascal,
  }
}
