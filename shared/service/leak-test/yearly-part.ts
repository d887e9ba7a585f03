import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import { reader } from '../../instrument/index.ts'
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
  say,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput } from './fields.ts'

export const yearlyOut = z
  .strictObject({
    lost: quantityOut.describe('Weighed in then, less weighed out now'),
    perYear: quantityOut.describe('Loss a year, taken as even over the time'),
    shareOfChargePerYear: quantityOut.describe('The same as a share of the charge'),
    againstNormal: z
      .enum(['below', 'above', 'cannot-tell'])
      .describe('Against the 200 g (7 oz) a year that one manual calls normal'),
  })
  .describe('Loss from two weighed charges')

export type YearlyResult = Computed<z.output<typeof yearlyOut>> & {
  readonly perYear: Quantity<'massFlow'>
}

/** How well a recovered mass is known: what stays in oil and hoses is not weighed. */
const RECOVERED = readQuantity(leakFacts.recoveredWithin.plusMinus, ['mass'])
const DAY = quantity('duration', 1, 'd')
const YEAR = quantity('duration', 1, 'yr')

/** Loss a year from the charge weighed in and the charge weighed out; undefined when neither is given. */
export function yearlyPart(input: LeakTestInput, notes: Notes): YearlyResult | undefined {
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
  plausible(between, DAY.si, 100 * YEAR.si, 'A time between two weighings', ['between'])
  const then = reader(input, notes)(chargeThen, 'scale', 'chargeThen')
  const now = chargeNow.plusMinus === undefined ? chargeNow.within(RECOVERED.si) : chargeNow
  if (chargeNow.plusMinus === undefined) {
    notes.assumptions.push({
      field: 'chargeNow',
      taken: `recovered mass ±${say(RECOVERED)}`,
      because: leakFacts.told.assumed['recovered-mass'],
    })
    notes.sources.push(leakSource('j2788-accuracy'))
  }
  const lost = propagate([then, now], (a, b) => a - b)
  const rate = propagate([then, now, between], (a, b, seconds) => (a - b) / seconds)
  const perYear = massFlow(rate.si, rate.plusMinus)
  const share = propagate(
    [then, now, between],
    (a, b, seconds) => ((a - b) / a) * (YEAR.si / seconds),
  )
  const normal = readQuantity(leakFacts.normalLoss.perYear, ['massFlow'])
  const found = compareWithBand(perYear, Number.NEGATIVE_INFINITY, normal.si)
  notes.sources.push(leakSource('tm-5-2420-230-24-1'), leakSource('mining-shovel-loss'))
  notes.steps.push({
    what: 'Loss a year',
    formula: '(charge then − charge now) ÷ time between',
    values: { chargeThen: then, chargeNow: now, between },
    gives: perYear,
  })
  if (lost.si + (lost.plusMinus ?? 0) < 0) {
    notes.warnings.push({
      code: 'more-than-was-charged',
      message: leakFacts.told.warnings['more-than-was-charged'],
    })
  }
  return {
    lost: mass(lost.si, lost.plusMinus),
    perYear,
    shareOfChargePerYear: fraction(share.si, share.plusMinus),
    againstNormal: found === 'inside' ? 'below' : found === 'above' ? 'above' : 'cannot-tell',
  }
}
