import { CalcError } from '../errors.ts'
import { nearestNames } from '../nearest.ts'
import { ENTRIES, type Entry } from './registry.ts'

/** Spaces, dashes, brackets, quotes, points, strokes, marks of a trade name, and what is not seen. */
const NO_LETTER = /[®™©\s\p{Pd}\p{Ps}\p{Pe}\p{Pi}\p{Pf}\p{Cf}'"`.,:;/\\_\u2212]/gu

/**
 * Case does not count, nor what is no letter. A letter of another alphabet or one that was lost on the
 * way stays, and makes the name one that nobody has: without it "R-134" would be left, which is another.
 */
const fold = (name: string): string =>
  name.replace(/[®™©]/gu, '').normalize('NFKC').toLowerCase().replace(NO_LETTER, '')

const ids: ReadonlyMap<string, Entry> = new Map(ENTRIES.map((entry) => [entry.info.id, entry]))
let known: ReadonlyMap<string, Entry> | undefined

/** Every entry by all of its names. */
function names(): ReadonlyMap<string, Entry> {
  known ??= new Map(
    ENTRIES.flatMap((entry) => {
      const { id, aliases } = entry.info
      const all = [id, id.replace(/^R-/u, ''), ...aliases]
      return all.map((name) => [fold(name), entry] as const)
    }),
  )
  return known
}

/** Digits and letters that are enough to mean one refrigerant where only one begins or ends with them. */
const LEAST_PART = 2

/** "410" for R-410A, "r134" for R-134a, "yf" for R-1234yf: the only number that begins or ends so. */
function byPart(typed: string): Entry | undefined {
  const part = typed.replace(/^r(?=\d)/u, '')
  if (part.length < LEAST_PART) return undefined
  const numbered = ENTRIES.map((entry) => ({
    entry,
    number: fold(entry.info.id).replace(/^r/u, ''),
  }))
  // A part of a number must be all of its digits: "13" is no R-134a.
  const digits = /^\d+/u.exec(part)?.[0]
  const fits = numbered.filter(({ number }) =>
    digits === part
      ? new RegExp(`^${part}[a-z]*$`, 'u').test(number)
      : digits === undefined && number.endsWith(part) && number !== part,
  )
  return fits.length === 1 ? fits[0]?.entry : undefined
}

/**
 * The entry of a refrigerant by any name a person may type: 'R-134a', 'r134a', '134A',
 * 'HFC-134a', 'propane', 'CO2', or by the part of the number that only one has. Throws 'unknown-refrigerant' with the nearest names.
 */
export function findEntry(name: string): Entry {
  const found = ids.get(name) ?? names().get(fold(name)) ?? byPart(fold(name))
  if (found !== undefined) return found
  const idsOf = new Map(
    ENTRIES.flatMap(({ info }) => [info.id, ...info.aliases].map((each) => [each, info.id])),
  )
  const near = new Set(nearestNames(name, [...idsOf.keys()], 5).map((each) => idsOf.get(each)))
  const shown = name.length > 40 ? `${name.slice(0, 40)}…` : name
  const strange = /[^a-z0-9]/u.exec(fold(name))?.[0]
  const instead =
    near.size > 0
      ? `Nearest: ${[...near].slice(0, 3).join(', ')}.`
      : `Known: ${ENTRIES.map((entry) => entry.info.id).join(', ')}.`
  throw new CalcError('unknown-refrigerant', `There is no refrigerant '${shown}' here.`, {
    hint: strange === undefined ? instead : `${instead} No name has '${strange}' in it.`,
  })
}
