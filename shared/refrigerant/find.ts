import { CalcError } from '../errors.ts'
import { nearestNames } from '../nearest.ts'
import { ENTRIES, type Entry } from './registry.ts'

/** Case, hyphens, spaces and brackets do not count. */
const fold = (name: string): string =>
  name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^a-z0-9]/gu, '')

const names = new Map<string, Entry>()
for (const entry of ENTRIES) {
  const { id, aliases } = entry.info
  const number = id.replace(/^R-/u, '')
  for (const name of [id, number, ...aliases]) names.set(fold(name), entry)
}

/**
 * The entry of a refrigerant by any name a person may type: 'R-134a', 'r134a', '134A',
 * 'HFC-134a', 'propane', 'CO2'. Throws 'unknown-refrigerant' with the nearest names.
 */
export function findEntry(name: string): Entry {
  const found = names.get(fold(name))
  if (found !== undefined) return found
  const ids = new Map(
    ENTRIES.flatMap(({ info }) => [info.id, ...info.aliases].map((each) => [each, info.id])),
  )
  const near = new Set(nearestNames(name, [...ids.keys()], 5).map((each) => ids.get(each)))
  const shown = name.length > 40 ? `${name.slice(0, 40)}…` : name
  throw new CalcError('unknown-refrigerant', `There is no refrigerant '${shown}' here.`, {
    hint:
      near.size > 0
        ? `Nearest: ${[...near].slice(0, 3).join(', ')}.`
        : `Known: ${ENTRIES.map((entry) => entry.info.id).join(', ')}.`,
  })
}
