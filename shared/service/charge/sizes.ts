import { type Kind, Quantity } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'

/** More than any machine that one person services: 100 t, 100 m³, 10 km, 1 t/m. */
const LARGEST: Partial<Readonly<Record<Kind, number>>> = {
  mass: 1e5,
  volume: 100,
  length: 1e4,
  massPerLength: 1e3,
}
const NAMES: Partial<Readonly<Record<Kind, string>>> = {
  mass: 'A mass',
  volume: 'A volume',
  length: 'A length',
  massPerLength: 'A mass per length',
}
/** Fields of the place have their own limits. */
const ELSEWHERE: ReadonlySet<string> = new Set(['altitude', 'barometer'])

/** @throws {CalcError} `out-of-range` for a size anywhere in the input that no machine has. */
export function checkSizes(input: unknown, path: readonly (string | number)[] = []): void {
  if (input instanceof Quantity) {
    const given: Quantity = input
    const largest = LARGEST[given.kind]
    if (largest !== undefined) plausible(given, 0, largest, NAMES[given.kind] ?? 'This', path)
    return
  }
  if (Array.isArray(input)) {
    for (const [index, item] of input.entries()) checkSizes(item, [...path, index])
    return
  }
  if (input === null || typeof input !== 'object') return
  for (const [field, value] of Object.entries(input)) {
    if (!ELSEWHERE.has(field)) checkSizes(value, [...path, field])
  }
}
