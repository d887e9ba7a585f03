import {
  type Budget,
  highest,
  lowest,
  surelyAbove,
  type Uncertain,
} from '../../../quantity/index.ts'
import type { ChargeTolerance } from '../../charge-tolerance.ts'

export type AgainstCharge = 'inside' | 'outside' | 'cannot-tell'

/** What a bound allows: that it cannot matter, or nothing. It is never called the loss. */
export type BoundVerdict = 'inside' | 'too-loose'

/**
 * A missing mass against the tolerance of the charge: below its smaller figure inside, above its
 * larger one outside, between them or across them it cannot be told.
 */
export function againstCharge(missing: Uncertain, { from, to }: ChargeTolerance): AgainstCharge {
  if (highest(missing) <= from.si) return 'inside'
  return surelyAbove(missing, to.si) ? 'outside' : 'cannot-tell'
}

/** Most that can be gone, with every ± at its worse end, against the tolerance. */
export const boundAgainst = (mostKg: number, { from }: ChargeTolerance): BoundVerdict =>
  mostKg <= from.si ? 'inside' : 'too-loose'

/** What would settle it: the maker's tolerance where the figure lies between the published two, else the largest part. */
export function settledBy(missing: Budget, { from, to, basis }: ChargeTolerance): string {
  const between = lowest(missing) > from.si && highest(missing) <= to.si
  if (basis !== 'given' && between) return "the maker's own tolerance (chargeTolerance)"
  const [largest] = missing.parts
  if (!largest) return "the maker's own tolerance (chargeTolerance)"
  return `a better figure for the ${largest.name}`
}

const TEXTS: Readonly<Record<AgainstCharge, string>> = {
  inside: 'Within the charge tolerance.',
  outside: 'More than the charge tolerance: it must go back in.',
  'cannot-tell': 'Whether it matters cannot be told against the charge tolerance',
}

/** The verdict in a sentence. */
export const againstChargeText = (verdict: AgainstCharge, settles: string | undefined): string =>
  verdict === 'cannot-tell' ? `${TEXTS[verdict]}; ${settles} would settle it.` : TEXTS[verdict]
