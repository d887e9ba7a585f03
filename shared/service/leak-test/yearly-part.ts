import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  fraction,
  mass,
  massFlow,
  propagate,
  type Quantity,
  quantity,
  quantityOut,
  readQuantity,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { leakFacts, leakSource } from './facts.ts'

export const yearlyOut = z
  .strictObject({
    lost: quantityOut.describe('Weighed in then, less weighed out now'),
    perYear: quantityOut.describe('Loss a year, taken as even over the time'),
    shareOfChargePerYear: quantityOut,
    againstNormal: z
      .enum(['below', 'above', 'cannot-tell'])
      .describe('Against the 200 g (7 oz) a year that one manual calls normal'),
  })
  .describe('Loss from two weighed charges')

type YearlyResult = Computed<z.output<typeof yearlyOut>> & {
  readonly perYear: Quantity<'massFlow'>
}

interface YearlyInput {
  readonly chargeThen?: Quantity<'mass'> | undefined
  readonly chargeNow?: Quantity<'mass'> | undefined
  readonly between?: Quantity<'duration'> | undefined
}

/** SAE J2788: a charge within 0.5 oz, a recovered mass within 1 oz. */
const THEN_KG = 0.5 * 0.028349523125
const NOW_KG = 0.028349523125

/** Loss a year from the charge weighed in and the charge weighed out; undefined when neither is given. */
export function yearlyPart(input: YearlyInput, notes: Notes): YearlyResult | undefined {
  const { chargeThen, chargeNow, between } = input
  if (!chargeThen && !chargeNow && !between) return undefined
  if (!chargeThen || !chargeNow || !between) {
    const missing = (['chargeThen', 'chargeNow', 'between'] as const).filter((name) => !input[name])
    throw new CalcError(
      'missing-input',
      'A yearly loss takes both weighed charges and the time between.',
      {
        path: missing.slice(0, 1),
        hint: `Give ${missing.join(' and ')} as well.`,
      },
    )
  }
  plausible(chargeThen, 1e-3, 10_000, 'A charge', ['chargeThen'])
  plausible(chargeNow, 0, 10_000, 'A charge', ['chargeNow'])
  plausible(between, 86_400, 100 * 365.25 * 86_400, 'A time between two weighings', ['between'])
  if (chargeThen.plusMinus === undefined || chargeNow.plusMinus === undefined) {
    notes.assumptions.push({
      field: 'chargeThen',
      taken: 'charged within ±0.5 oz (14 g), recovered within ±1 oz (28 g) where none was stated',
      because: 'machines to SAE J2788 weigh so; oil and hoses keep more back',
    })
    notes.sources.push(leakSource('j2788-accuracy'))
  }
  const then = { si: chargeThen.si, plusMinus: chargeThen.plusMinus ?? THEN_KG }
  const now = { si: chargeNow.si, plusMinus: chargeNow.plusMinus ?? NOW_KG }
  const lost = propagate([then, now], (a, b) => a - b)
  const rate = propagate([then, now, between], (a, b, seconds) => (a - b) / seconds)
  const perYear = massFlow(rate.si, rate.plusMinus)
  const year = quantity('duration', 1, 'yr').si
  const share = propagate([then, now, between], (a, b, seconds) => ((a - b) / a) * (year / seconds))
  const normal = readQuantity(leakFacts.normalLoss.perYear, ['massFlow'])
  const found = compareWithBand(perYear, Number.NEGATIVE_INFINITY, normal.si)
  notes.sources.push(leakSource('tm-5-2420-230-24-1'), leakSource('mining-shovel-loss'))
  notes.steps.push({
    what: 'Loss a year',
    formula: '(charge then − charge now) ÷ time between',
    values: { chargeThen, chargeNow, between },
    gives: perYear,
  })
  if (lost.si + (lost.plusMinus ?? 0) < 0) {
    notes.warnings.push({
      code: 'more-than-was-charged',
      message:
        'More came out than was charged: a charge was added in between, or the weighings do not fit.',
    })
  }
  return {
    lost: mass(lost.si, lost.plusMinus),
    perYear,
    shareOfChargePerYear: fraction(share.si, share.plusMinus),
    againstNormal: found === 'inside' ? 'below' : found === 'above' ? 'above' : 'cannot-tell',
  }
}
