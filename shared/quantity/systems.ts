import { keptBy } from '../kept.ts'
import type { Quantity } from './quantity.ts'

/** Units that only the US customary system has; a unit of both (micron, min, %) says nothing. */
const US =
  /^(?:°[FR]|psi[ag]?|psi (?:vac)|in(?:Hg|H2O)?(?: (?:g|abs|vac))?|lb|oz|fl oz|gal|qt|pt|ft|yd|in3|ft3|cfm|Btu\b.*|lb\/.*|oz\/.*|ft\/.*)$/u
const NEUTRAL = /^(?:micron|Torr|s|min|h|d|yr|%|ppm|atm(?:$| .*)|g\/ft)$/u

/** There are fewer units; nobody makes up more. */
const MOST_SYMBOLS = 1_000

/** Which unit system a reading was written in; undefined where its unit belongs to both. */
export const systemOf = ({ written }: Quantity): 'us' | 'si' | undefined =>
  written === undefined ? undefined : unitSystemOf(written)

/** Which unit system a unit belongs to, by its symbol; undefined where both have it. */
export const unitSystemOf = keptBy((symbol: string): 'us' | 'si' | undefined => {
  if (NEUTRAL.test(symbol)) return undefined
  return US.test(symbol) ? 'us' : 'si'
}, MOST_SYMBOLS)
