import data from '../../../data/service/charge-checks.json' with { type: 'json' }
import { mass, type Quantity, type Uncertain } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { type CheckSource, checkSource } from './line-check.ts'

const OUNCE = 0.028349523125

export type Against = 'inside' | 'outside' | 'cannot-tell'

interface ChargeComparison {
  readonly from: Quantity<'mass'>
  readonly to: Quantity<'mass'>
  readonly verdict: Against
  readonly text: string
  readonly source: Source | undefined
}

/**
 * A missing mass against the tolerance of the charge.
 *
 * Where the user gives none, the published one of US Army loader manuals, 1 to 2 oz, counts:
 * below the smaller inside, above the larger outside, between them it cannot be told.
 */
export function againstCharge(
  missing: Uncertain,
  given: Quantity<'mass'> | undefined,
): ChargeComparison {
  const { fromOz, toOz, source } = data.chargeTolerance
  const from = given ?? mass(fromOz * OUNCE)
  const to = given ?? mass(toOz * OUNCE)
  const width = missing.plusMinus ?? 0
  const verdict: Against =
    missing.si + width <= from.si
      ? 'inside'
      : missing.si - width > to.si
        ? 'outside'
        : 'cannot-tell'
  const against = given
    ? "the charge's tolerance"
    : 'the 1 to 2 oz (30 to 60 g) that a published loader manual allows'
  const texts: Readonly<Record<Against, string>> = {
    inside: `What is missing lies within ${against}: by itself it does not take the machine out of its charge.`,
    outside: `What is missing is more than ${against}: it must go back in.`,
    'cannot-tell': `Whether what is missing matters cannot be told against ${against}: ${given ? 'measure the volumes better, or weigh in the full charge' : "the maker's own tolerance would settle it"}.`,
  }
  return {
    from,
    to,
    verdict,
    text: texts[verdict],
    source: given ? undefined : checkSource(source as CheckSource),
  }
}

export interface ScaleComparison {
  readonly smallest: Quantity<'mass'>
  readonly verdict: 'weighable' | 'too-small' | 'cannot-tell'
  readonly text: string
  readonly source: Source | undefined
}

/** A mass to weigh against what the scale can tell apart: the larger of its resolution and its tolerance. */
export function againstScale(
  toWeigh: Uncertain,
  resolution: Quantity<'mass'> | undefined,
  tolerance: Quantity<'mass'> | undefined,
): ScaleComparison {
  const given = resolution ?? tolerance
  const remembered = data.scaleTolerance
  const smallestKg = given
    ? Math.max(resolution?.si ?? 0, tolerance?.si ?? 0)
    : remembered.grams / 1000
  const width = toWeigh.plusMinus ?? 0
  const verdict =
    toWeigh.si - width > smallestKg
      ? 'weighable'
      : toWeigh.si + width < smallestKg
        ? 'too-small'
        : 'cannot-tell'
  const scale = given
    ? 'the scale'
    : 'a charging machine (15 g or 0.5 oz, from memory; scaleTolerance goes before)'
  const texts = {
    weighable: `The mass is more than ${scale} can be off.`,
    'too-small': `The mass is smaller than ${scale} can be off: adding it by that scale is a guess.`,
    'cannot-tell': `The mass is about what ${scale} can be off.`,
  }
  return {
    smallest: mass(smallestKg),
    verdict,
    text: texts[verdict],
    source: given ? undefined : checkSource(remembered.source as CheckSource),
  }
}
