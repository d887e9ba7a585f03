import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  fraction,
  propagate,
  type Quantity,
  quantity,
  quantityOut,
  readQuantity,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { refrigerantFacts } from '../../rules/facts.ts'
import { plausible } from '../plausible.ts'
import { lawSources, leakFacts, leakSource } from './facts.ts'
import type { LeakTestInput } from './fields.ts'

export const federalOut = z
  .strictObject({
    jurisdiction: z.literal('US federal'),
    annualizing: quantityOut
      .optional()
      .describe('Leak rate by the annualizing method (40 CFR 82.152, 2015 edition)'),
    rolling: quantityOut
      .optional()
      .describe('Leak rate by the rolling average (40 CFR 82.152, 2015 edition)'),
    threshold: quantityOut.describe('Leak rate that starts the duty to repair, where it applies'),
    above: z
      .enum(['yes', 'no', 'cannot-tell'])
      .optional()
      .describe('Whether the leak rate lies above that'),
    applies: z
      .enum(['no', 'yes', 'look-up'])
      .describe(
        'Whether the duty applies by refrigerant and charge: 50 lb of an ozone-depleting one, 15 lb of a hydrofluorocarbon',
      ),
    because: z.string().describe('Why'),
    statements: z.array(z.string()).describe('Ids of the statements of law among `practice`'),
  })
  .describe('Leak-rate arithmetic of the federal leak-repair rules')

export type FederalResult = Computed<z.output<typeof federalOut>>

const DAY = quantity('duration', 1, 'd')
const YEAR_DAYS = 365
/** The limits as the law writes them; a rounding of the conversion is no pound. */
const SLACK_KG = 1e-9
const ODS_KG = readQuantity(leakFacts.federalLimits.ozoneDepleting, ['mass']).si - SLACK_KG
const HFC_KG = readQuantity(leakFacts.federalLimits.hydrofluorocarbon, ['mass']).si - SLACK_KG
const MOST_KG = 1e5

/** Federal leak rates; undefined when nothing for them is given. */
export function federalPart(
  input: LeakTestInput,
  r: Refrigerant | undefined,
  notes: Notes,
): FederalResult | undefined {
  const { labelCharge, added, sinceLastAddition, addedInYear } = input
  if (!labelCharge && !added && !sinceLastAddition && !addedInYear && !input.appliance)
    return undefined
  if (!labelCharge) {
    throw new CalcError('missing-input', 'The federal leak rate is a share of the full charge.', {
      path: ['labelCharge'],
      hint: 'Give the full charge of the circuit from its label.',
    })
  }
  plausible(labelCharge, 1e-3, MOST_KG, 'A full charge', ['labelCharge'])
  const appliance = input.appliance ?? 'comfort-cooling'
  if (!input.appliance) {
    notes.assumptions.push({
      field: 'appliance',
      taken: 'comfort cooling',
      because: 'the kind of appliance was not given',
    })
  }
  const rates = ratesOf(labelCharge, input, notes)
  if (rates.length > 0) {
    notes.sources.push(leakSource('cfr-82-152-leak-rate'))
    notes.warnings.push({
      code: 'formulas-of-2015',
      message: leakFacts.told.warnings['formulas-of-2015'],
    })
  }
  const threshold = leakFacts.thresholds[appliance]
  const { applies, because, statements } = duty(labelCharge.si, r)
  notes.sources.push(...lawSources(statements))
  const highest = rates.reduce<Quantity<'fraction'> | undefined>(
    (kept, { rate }) => (kept && kept.si >= rate.si ? kept : rate),
    undefined,
  )
  return {
    jurisdiction: 'US federal',
    annualizing: rates.find(({ id }) => id === 'annualizing')?.rate,
    rolling: rates.find(({ id }) => id === 'rolling')?.rate,
    threshold: fraction(threshold),
    above: highest && against(highest, threshold),
    applies,
    because: leakFacts.told.federal[because],
    statements: [...statements],
  }
}

function against(rate: Quantity<'fraction'>, threshold: number) {
  const found = compareWithBand(rate, Number.NEGATIVE_INFINITY, threshold)
  return found === 'inside' ? 'no' : found === 'above' ? 'yes' : 'cannot-tell'
}

interface Rate {
  readonly id: 'annualizing' | 'rolling'
  readonly rate: Quantity<'fraction'>
}

/** Leak rates by both methods of 40 CFR 82.152, with the ± that was given. */
function ratesOf(
  labelCharge: Quantity<'mass'>,
  { added, sinceLastAddition, addedInYear }: LeakTestInput,
  notes: Notes,
): readonly Rate[] {
  if ((added === undefined) !== (sinceLastAddition === undefined)) {
    throw new CalcError(
      'missing-input',
      'The annualizing method takes the mass added and the time since the last addition.',
      {
        path: [added ? 'sinceLastAddition' : 'added'],
        hint: 'Give both, or the mass added in the last 365 days for the rolling average.',
      },
    )
  }
  const share = (part: Quantity<'mass'>, times: number, path: string) => {
    plausible(part, 0, MOST_KG, 'A mass added', [path])
    const found = propagate([part, labelCharge], (kg, full) => (kg / full) * times)
    return fraction(found.si, found.plusMinus)
  }
  const rates: Rate[] = []
  if (added && sinceLastAddition) {
    const days = plausible(
      sinceLastAddition,
      DAY.si,
      100 * 366 * DAY.si,
      'A time since the last addition',
      ['sinceLastAddition'],
    ).to('d')
    const rate = share(added, YEAR_DAYS / Math.min(days, YEAR_DAYS), 'added')
    rates.push({ id: 'annualizing', rate })
    notes.steps.push({
      what: 'Leak rate, annualizing (2015 edition)',
      formula:
        'added ÷ full charge × 365 ÷ the smaller of 365 and the days since the last addition',
      values: { added, labelCharge, days: Number(days.toFixed(1)) },
      gives: rate,
    })
  }
  if (addedInYear) {
    const rate = share(addedInYear, 1, 'addedInYear')
    rates.push({ id: 'rolling', rate })
    notes.steps.push({
      what: 'Leak rate, rolling average (2015 edition)',
      formula: 'added in the last 365 days ÷ full charge',
      values: { addedInYear, labelCharge },
      gives: rate,
    })
  }
  return rates
}

interface Duty {
  readonly applies: FederalResult['applies']
  readonly because: keyof typeof leakFacts.told.federal
  /** Statements of the law room. */
  readonly statements: readonly string[]
}

/** By refrigerant and charge alone; the text of the law says what else decides. */
function duty(chargeKg: number, r: Refrigerant | undefined): Duty {
  const families = r && refrigerantFacts(r.info).families
  const depletes = families?.includes('ods')
  const hydrofluorocarbon = families?.includes('hfc')
  if (chargeKg < HFC_KG) {
    return { applies: 'no', because: 'below-both', statements: ['cab-below-limits', STATES] }
  }
  if (chargeKg >= ODS_KG && depletes) {
    return { applies: 'yes', because: 'ozone-depleting', statements: ['leak-50-lb', STATES] }
  }
  if (families && !hydrofluorocarbon) {
    const because = depletes ? 'below-50-lb' : 'neither'
    return { applies: 'no', because, statements: ['cab-below-limits', STATES] }
  }
  return {
    applies: 'look-up',
    because: 'may-apply',
    statements: [
      ...(depletes === false ? [] : ['leak-50-lb']),
      'leak-15-lb',
      'leak-15-lb-rates',
      'leak-15-lb-vehicles',
      STATES,
    ],
  }
}

const STATES = 'states-differ'
