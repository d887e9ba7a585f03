import { CalcError } from '../../errors.ts'
import { type Quantity, say, temperature } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'

/** Above this share the light components are gone and only rounding is left to follow. */
export const MOST_LOST = 0.95
/** Below this share what got out is a difference of almost equal masses: rounding, not composition. */
export const LEAST_LOST = 0.001
/** 95 % must not fail by the rounding of its own conversion. */
const ROUNDING = 1e-9
/** Nearer to the critical point, liquid and vapour are too alike to follow. */
const HOTTEST = 0.97
/** @throws {CalcError} `out-of-range` about the field `path`. */
export function shareWithin(given: Quantity<'fraction'>, path: string): void {
  if (given.si >= LEAST_LOST - ROUNDING && given.si <= MOST_LOST + ROUNDING) return
  throw new CalcError('out-of-range', `A share of ${say(given)} cannot be followed.`, {
    path: [path],
    hint: 'Give 0.1 % to 95 %.',
  })
}

/** @throws {CalcError} `refused`. */
export function checkBlend(r: Refrigerant): void {
  if (r.info.composition.length > 1) return
  throw new CalcError('refused', `${r.info.id} is one substance: a leak does not change it.`, {
    path: ['refrigerant'],
    hint: 'Nothing to work out. Once the leak is mended, add what is missing by weight.',
  })
}

/** @throws {CalcError} `above-critical` or `out-of-range`. */
export function checkTemperature(r: Refrigerant, given: Quantity<'temperature'>): void {
  const highestK = HOTTEST * r.criticalTemperatureK
  if (given.si >= r.minimumTemperatureK && given.si <= highestK) return
  const hot = given.si > highestK
  throw new CalcError(
    hot ? 'above-critical' : 'out-of-range',
    `${r.info.id} at ${say(given)} is ${hot ? 'too near its critical point' : 'too cold'} to follow a leak.`,
    {
      path: ['temperature'],
      hint: `Give a temperature from ${say(temperature(r.minimumTemperatureK))} to ${say(temperature(highestK))}.`,
    },
  )
}
