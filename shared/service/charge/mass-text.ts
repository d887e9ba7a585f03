import type { Quantity } from '../../quantity/index.ts'

const OUNCE = 0.028349523125
const OUNCES_PER_POUND = 16

export const MASS_UNITS = ['lb-oz', 'lb', 'oz', 'g', 'kg'] as const
export type MassUnit = (typeof MASS_UNITS)[number]

/** Unit of `shared/quantity` in which masses are shown; undefined leaves it to the unit system. */
export const shownUnit = (unit: MassUnit | undefined) => (unit === 'lb-oz' ? 'lb' : unit)

/** A mass as one would set it on a scale: "1 lb 4.2 oz (572 g)" where no unit is asked for. */
export function massText(mass: Quantity<'mass'>, unit: MassUnit | undefined): string {
  const kilograms = Math.abs(mass.si)
  const sign = mass.si < 0 ? '−' : ''
  const grams = () => `${sign}${steps(kilograms * 1000, 0)} g`
  switch (unit) {
    case 'lb':
      return `${sign}${steps(kilograms / (OUNCES_PER_POUND * OUNCE), 3)} lb`
    case 'oz':
      return `${sign}${steps(kilograms / OUNCE, 1)} oz`
    case 'g':
      return grams()
    case 'kg':
      return `${sign}${steps(kilograms, 3)} kg`
    case 'lb-oz':
      return sign + poundsAndOunces(kilograms)
    default:
      return `${sign}${poundsAndOunces(kilograms)} (${grams()})`
  }
}

/** As many decimals as a scale shows; two digits where that would leave next to nothing ("0.066 oz"). */
function steps(value: number, decimals: number): string {
  const small = value > 0 && value < 10 ** (1 - decimals)
  return small ? String(Number(value.toPrecision(2))) : value.toFixed(decimals)
}

/** Rounded to 0.1 oz first, so that 15.97 oz is 1 lb 0.0 oz. */
function poundsAndOunces(kilograms: number): string {
  const tenths = Math.round((kilograms / OUNCE) * 10)
  const pounds = Math.floor(tenths / (10 * OUNCES_PER_POUND))
  const ounces = tenths / 10 - pounds * OUNCES_PER_POUND
  return pounds === 0 ? `${steps(kilograms / OUNCE, 1)} oz` : `${pounds} lb ${ounces.toFixed(1)} oz`
}
