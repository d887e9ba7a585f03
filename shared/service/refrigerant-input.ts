import * as z from 'zod'
import { type Caution, cautions } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import { type Refrigerant, refrigerant } from '../refrigerant/index.ts'

/** How every step asks for the refrigerant; an unknown name is refused with the nearest ones. */
export const refrigerantIn = z
  .string()
  .min(1)
  .max(60)
  .describe('Refrigerant by any of its names: R-134a, 134a, HFO-1234yf, propane, CO2')

/** Runs `work`; a refusal in it is about the input field `path`, or what stands below it. */
export function under<T>(path: string | readonly (string | number)[], work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw error instanceof CalcError ? error.under(...[path].flat()) : error
  }
}

/** The refrigerant that the input names. @throws {CalcError} `unknown-refrigerant` with the nearest names. */
export const pickRefrigerant = (name: string): Refrigerant =>
  under('refrigerant', () => refrigerant(name))

/** ASHRAE 34 class 2L, 2 or 3. */
export const burns = (r: Refrigerant): boolean => /[23]L?$/u.test(r.info.safetyClass.value)

/** What is dangerous about the refrigerant itself: it burns, or it is R-744. */
export const flammableCautions = (r: Refrigerant): readonly Caution[] => [
  ...(burns(r) ? cautions('flammable') : []),
  ...(r.info.composition.some(({ substance }) => substance === 'R-744') && r.info.kind === 'pure'
    ? cautions('carbon-dioxide')
    : []),
]
