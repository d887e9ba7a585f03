import type { Quantity, Uncertain } from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import type { Condition } from '../condition.ts'
import type { AirLimit } from './limit.ts'

export const VERDICTS = [
  'within-limit',
  'over-limit',
  'air-shown',
  'no-air-shown',
  'below-saturation',
  'cannot-tell',
] as const
export type Verdict = (typeof VERDICTS)[number]

/** Above this multiple of the saturation pressure air is the least likely of the causes (judgement). */
export const FAR_ABOVE = 1.5

/**
 * What the pressure says against a published limit.
 *
 * Only stated uncertainties count here: the procedure compares readings as they are.
 */
function againstLimit(pressurePa: Uncertain, limit: AirLimit): Verdict {
  const width = pressurePa.plusMinus ?? 0
  const { atLeastPa, atMostPa } = limit
  // A gauge reading and a printed psi meet exactly: below a pascal they are the same.
  if (atLeastPa !== undefined && pressurePa.si + width <= atLeastPa + 1) return 'within-limit'
  if (atMostPa !== undefined && pressurePa.si - width > atMostPa + 1) return 'over-limit'
  return 'cannot-tell'
}

/**
 * What the pressure says against saturation alone.
 *
 * Above the bubble pressure by more than the uncertainty: air, or another gas. Below the dew pressure
 * by more than it: no liquid is left. A blend between its two lines says nothing.
 *
 * @param excessPa - Pressure above the bubble line with its uncertainty.
 */
export function againstSaturation(
  r: Refrigerant,
  pressurePa: number,
  temperatureK: number,
  excessPa: Uncertain,
): Verdict {
  const width = excessPa.plusMinus ?? 0
  if (excessPa.si > width) return 'air-shown'
  if (pressurePa + width < saturationPressure(r, temperatureK, 'dew')) return 'below-saturation'
  return excessPa.si + width < 0 ? 'cannot-tell' : 'no-air-shown'
}

/** The verdict: no decision where a condition is known not to hold. */
export function judge(
  r: Refrigerant,
  pressure: Quantity<'absolutePressure'>,
  temperatureK: number,
  excess: Uncertain,
  limit: AirLimit | undefined,
  conditions: readonly Condition[],
): Verdict {
  const bySaturation = againstSaturation(r, pressure.si, temperatureK, excess)
  if (bySaturation === 'below-saturation') return bySaturation
  if (conditions.some((entry) => entry.met === 'no')) return 'cannot-tell'
  return limit ? againstLimit(pressure, limit) : bySaturation
}
