import * as z from 'zod'
import type { Place } from '../instrument/index.ts'
import type { AtRest } from '../physics/at-rest.ts'
import { pressureDifference, quantityOut, type Uncertain } from '../quantity/index.ts'

/** How every step shows a pressure at rest against saturation: the same reading, the same fields. */
export const restShownOut = {
  state: z
    .enum(['below', 'between', 'at', 'above', 'liquid-full', 'cannot-tell'])
    .describe(
      'How the pressure at rest stands to saturation, or to what the given contents have; between: the two lines of a blend',
    ),
  saturation: z
    .strictObject({
      bubble: quantityOut.optional().describe('Where its liquid begins to boil'),
      dew: quantityOut.optional().describe('Where the last of its liquid is gone'),
    })
    .describe('As a gauge here shows it, at the temperature that was read'),
  expected: quantityOut.optional().describe('Pressure that the given contents have, as a gauge'),
  off: quantityOut
    .optional()
    .describe('Measured less expected, or less the nearer line of saturation'),
  from: z.enum(['bubble', 'dew', 'contents']).describe('What that is counted from'),
}

/** @param place - The air around the machine, whose uncertainty is in every gauge pressure. */
export function restShown(found: AtRest, place: Place) {
  const gauge = (pressure: Uncertain | undefined) =>
    pressure && place.gauge(pressure.si, pressure.plusMinus)
  return {
    state: found.state,
    saturation: { bubble: gauge(found.bubble), dew: gauge(found.dew) },
    expected: gauge(found.expected),
    off: found.off && pressureDifference(found.off.si, found.off.plusMinus),
    from: found.from,
  }
}
