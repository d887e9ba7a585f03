import type { Quantity } from './quantity.ts'

/** Units that only the US customary system has; a unit of both (micron, min, %) says nothing. */
const US =
  /^(?:°[FR]|psi[ag]?|psi (?:vac)|in(?:Hg|H2O)?(?: (?:g|abs|vac))?|lb|oz|fl oz|gal|qt|pt|ft|yd|in3|ft3|cfm|Btu\b.*|lb\/.*|oz\/.*|ft\/.*)$/u
const NEUTRAL = /^(?:micron|Torr|s|min|h|d|yr|%|ppm|atm(?:$| .*)|g\/ft)$/u

/** Which unit system a reading was written in; undefined where its unit belongs to both. */
export function systemOf({ written }: Quantity): 'us' | 'si' | undefined {
  if (written === undefined || NEUTRAL.test(written)) return undefined
  return US.test(written) ? 'us' : 'si'
}
