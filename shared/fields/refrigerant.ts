import * as z from 'zod'
import { under } from '../errors.ts'
import { type Refrigerant, refrigerant } from '../refrigerant/index.ts'

/** How every step asks for the refrigerant; an unknown name is refused with the nearest ones. */
export const refrigerantIn = z
  .string()
  .min(1)
  .max(60)
  .describe('Refrigerant by any of its names: R-134a, 134a, HFO-1234yf, propane, CO2')

/** The refrigerant that will replace the present one. */
export const newRefrigerantIn = refrigerantIn.describe('The new refrigerant, such as R-134a')

/** The refrigerant that the input names. @throws {CalcError} `unknown-refrigerant` with the nearest names. */
export const pickRefrigerant = (name: string, field = 'refrigerant'): Refrigerant =>
  under(field, () => refrigerant(name))

/** ASHRAE 34 class 2L, 2 or 3. */
export const burns = (r: Refrigerant): boolean => /[23]L?$/u.test(r.info.safetyClass.value)

/** Carbon dioxide: under many times the pressure of others, above its critical point on a warm day. */
export const isCarbonDioxide = (r: Refrigerant): boolean => r.info.id === 'R-744'
