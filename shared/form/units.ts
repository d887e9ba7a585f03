import { unitSystemOf } from '../quantity/index.ts'
import { among, at } from './known.ts'

/** The units that examples of a quantity are written in: "2 lb 6 oz" names lb and oz. */
export function unitsIn(examples: readonly string[]): readonly string[] {
  const units = examples.flatMap((example) =>
    // A number, then its unit up to the next number that stands apart.
    [
      ...example.matchAll(/(?:^|\s)[-+]?[\d./]+(?:e[-+]?\d+)?\s*(\D[^\s]*(?:\s(?!\d)[^\s]+)*)/gu),
    ].map(([, unit = '']) => unit.trim()),
  )
  return [...new Set(units)].filter((unit) => unit !== '')
}

/**
 * The units to offer for a field: those that it is mostly written in, else those of its examples; of
 * them those of a system and those that belong to both, all where none is chosen.
 *
 * @param path - Where the field stands: its name, behind that of its list.
 */
export function unitsFor(
  path: readonly (string | number)[],
  examples: readonly string[],
  system: 'us' | 'si' | 'both' | undefined,
): readonly string[] {
  const names = path.filter((part) => typeof part === 'string')
  const units =
    among((forms) => at(forms.units, names.slice(-2).join('.'))) ??
    among((forms) => at(forms.units, names.at(-1) ?? '')) ??
    withoutKelvin(unitsIn(examples))
  if (system !== 'us' && system !== 'si') return units
  const fit = units.filter((unit) => (unitSystemOf(unit) ?? system) === system)
  return fit.length > 0 ? fit : units
}

/** Kelvin is read where somebody types it; no thermometer in a shop shows it. */
const withoutKelvin = (units: readonly string[]) =>
  units.includes('°C') ? units.filter((unit) => unit !== 'K') : units

/** A text with its unit changed, or put behind it: what a unit button does. */
export function withUnit(text: string, unit: string, units: readonly string[]): string {
  const bare = withoutUnit(text, units)
  return bare === '' ? text : `${bare} ${unit}`
}

/** The unit that a text ends with, of those that there are buttons for. */
export const unitAtEnd = (text: string, units: readonly string[]): string | undefined =>
  [...units]
    .sort((one, other) => other.length - one.length)
    .find(
      (unit) =>
        fold(text).endsWith(fold(unit)) && /\d\s*$/u.test(text.trim().slice(0, -unit.length)),
    )

const fold = (text: string) => text.trim().toLowerCase()

function withoutUnit(text: string, units: readonly string[]): string {
  const trimmed = text.trim()
  const unit = unitAtEnd(trimmed, units)
  return unit === undefined ? trimmed : trimmed.slice(0, -unit.length).trim()
}
