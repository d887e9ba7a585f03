import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { fraction, type Quantity, quantity, quantityOut } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { refrigerantFacts } from '../../rules/facts.ts'
import { plausible } from '../plausible.ts'
import { leakFacts, leakSource } from './facts.ts'

export const APPLIANCES = [
  'commercial-refrigeration',
  'industrial-process',
  'comfort-cooling',
] as const

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
    applies: z
      .enum(['no', 'yes', 'look-up'])
      .describe(
        'Whether the duty of 40 CFR 82.157 (ozone-depleting, 50 lb) applies; look up where HFC rules may',
      ),
    because: z.string(),
  })
  .describe('Leak-rate arithmetic of the federal leak-repair rules')

type FederalResult = Computed<z.output<typeof federalOut>>

interface FederalInput {
  readonly fullCharge?: Quantity<'mass'> | undefined
  readonly added?: Quantity<'mass'> | undefined
  readonly sinceLastAddition?: Quantity<'duration'> | undefined
  readonly addedInYear?: Quantity<'mass'> | undefined
  readonly appliance?: (typeof APPLIANCES)[number] | undefined
}

const POUND = 0.45359237
const DAY = 86_400

/** Federal leak rates; undefined when nothing for them is given. */
export function federalPart(
  input: FederalInput,
  r: Refrigerant | undefined,
  notes: Notes,
): FederalResult | undefined {
  const { fullCharge, added, sinceLastAddition, addedInYear } = input
  if (!fullCharge && !added && !sinceLastAddition && !addedInYear && !input.appliance)
    return undefined
  if (!fullCharge) {
    throw new CalcError('missing-input', 'The federal leak rate is a share of the full charge.', {
      path: ['fullCharge'],
      hint: 'Give the full charge of the circuit from its label.',
    })
  }
  plausible(fullCharge, 1e-3, 1e6, 'A full charge', ['fullCharge'])
  const appliance = input.appliance ?? 'comfort-cooling'
  if (!input.appliance) {
    notes.assumptions.push({
      field: 'appliance',
      taken: 'comfort cooling',
      because: 'the kind of appliance was not given',
    })
  }
  notes.sources.push(
    leakSource('cfr-82-157'),
    leakSource('cfr-82-152-leak-rate'),
    leakSource('cfr-84-hfc-leak'),
  )
  const rates = ratesOf(fullCharge, added, sinceLastAddition, addedInYear, notes)
  if (rates.annualizing || rates.rolling) {
    notes.warnings.push({
      code: 'formulas-of-2015',
      message:
        'The two leak-rate formulas are those of the 2015 edition of 40 CFR 82.152, which was rewritten since: look up the definition in force before a record rests on them.',
    })
  }
  return {
    jurisdiction: 'US federal',
    ...rates,
    threshold: fraction(leakFacts.thresholds[appliance]),
    ...appliesTo(fullCharge.si, r),
  }
}

function ratesOf(
  fullCharge: Quantity<'mass'>,
  added: Quantity<'mass'> | undefined,
  since: Quantity<'duration'> | undefined,
  addedInYear: Quantity<'mass'> | undefined,
  notes: Notes,
) {
  if ((added === undefined) !== (since === undefined)) {
    throw new CalcError(
      'missing-input',
      'The annualizing method takes the mass added and the time since the last addition.',
      {
        path: [added ? 'sinceLastAddition' : 'added'],
        hint: 'Give both, or the mass added in the last 365 days for the rolling average.',
      },
    )
  }
  const share = (part: Quantity<'mass'>, path: string) =>
    plausible(part, 0, 1e6, 'A mass added', [path]).si / fullCharge.si
  const days =
    since &&
    plausible(since, DAY, 100 * 366 * DAY, 'A time since the last addition', ['sinceLastAddition'])
      .si / DAY
  const annualizing =
    added && days !== undefined
      ? fraction(share(added, 'added') * (365 / Math.min(days, 365)))
      : undefined
  const rolling = addedInYear && fraction(share(addedInYear, 'addedInYear'))
  if (annualizing && added) {
    notes.steps.push({
      what: 'Leak rate, annualizing (2015 edition)',
      formula:
        'added ÷ full charge × 365 ÷ the smaller of 365 and the days since the last addition',
      values: { added, fullCharge, days: Number((days ?? 0).toFixed(1)) },
      gives: annualizing,
    })
  }
  if (rolling && addedInYear) {
    notes.steps.push({
      what: 'Leak rate, rolling average (2015 edition)',
      formula: 'added in the last 365 days ÷ full charge',
      values: { addedInYear, fullCharge },
      gives: rolling,
    })
  }
  return { annualizing, rolling }
}

function appliesTo(
  chargeKg: number,
  r: Refrigerant | undefined,
): Pick<FederalResult, 'applies' | 'because'> {
  const pounds = chargeKg / quantity('mass', 1, 'lb').si
  if (pounds < 15 - 1e-9) {
    return {
      applies: 'no',
      because:
        'The circuit holds less than 15 lb: below both the 50 lb of ozone-depleting refrigerant and the 15 lb of the HFC rules. Cab systems normally fall outside.',
    }
  }
  const depletes = r ? r.info.odp.value > 0 : undefined
  if (chargeKg >= 50 * POUND - 1e-9 && depletes === true) {
    return {
      applies: 'yes',
      because: 'The circuit holds 50 lb or more of an ozone-depleting refrigerant.',
    }
  }
  if (r && !refrigerantFacts(r.info).families.includes('hfc')) {
    return {
      applies: 'no',
      because: depletes
        ? 'The circuit holds less than 50 lb of ozone-depleting refrigerant, and no HFC is in it.'
        : `${r.info.id} neither depletes ozone nor holds an HFC.`,
    }
  }
  return {
    applies: 'look-up',
    because:
      'At 15 lb and more the HFC rules of 40 CFR 84 subpart C may bind (GWP above 53, since 1 January 2026), and from 50 lb 40 CFR 82.157 for ozone-depleting refrigerant: look up which holds for this appliance.',
  }
}
