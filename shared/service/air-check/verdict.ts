import type { AtRest } from '../../physics/at-rest.ts'
import { type Uncertain, widthOf } from '../../quantity/index.ts'
import { type Condition, isOpen } from '../condition.ts'
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

/** Above this multiple of its own pressure air is the least likely of the causes (judgement). */
const FAR_ABOVE = 1.5

/** So far above the refrigerant's own pressure that it may be full of liquid. */
export const isFarAbove = ({ bubble, expected }: AtRest, pressurePa: number): boolean => {
  const alone = expected ?? bubble
  return alone !== undefined && pressurePa > FAR_ABOVE * alone.si
}

/** A gauge reading and a printed psi meet exactly: below a pascal they are the same. */
const SAME_PA = 1

/** What the pressure says against a published limit, its whole band counted. */
function againstLimit(pressure: Uncertain, { atLeastPa, atMostPa }: AirLimit): Verdict {
  const width = widthOf(pressure)
  if (atLeastPa !== undefined && pressure.si + width <= atLeastPa + SAME_PA) return 'within-limit'
  if (atMostPa !== undefined && pressure.si - width > atMostPa + SAME_PA) return 'over-limit'
  return 'cannot-tell'
}

/**
 * A blend between its two lines may be all right, or hold air over little liquid: without its
 * contents nothing is said.
 */
const BY_STATE: Readonly<Record<AtRest['state'], Verdict>> = {
  above: 'air-shown',
  at: 'no-air-shown',
  between: 'cannot-tell',
  below: 'below-saturation',
  'liquid-full': 'cannot-tell',
  'cannot-tell': 'cannot-tell',
}

/**
 * The verdict: no decision where a condition is not known to hold by what was read, and by a published limit only
 * where liquid is in it, as the limit needs.
 *
 * @param pressure - Pa absolute, its ± that of gauge and barometer.
 */
export function judge(
  found: AtRest,
  pressure: Uncertain,
  limit: AirLimit | undefined,
  conditions: readonly Condition[],
): Verdict {
  if (found.state === 'below') return 'below-saturation'
  if (conditions.some(isOpen)) return 'cannot-tell'
  const hasLiquid = found.holds === undefined || found.holds === 'two-phase'
  return limit && hasLiquid ? againstLimit(pressure, limit) : BY_STATE[found.state]
}
