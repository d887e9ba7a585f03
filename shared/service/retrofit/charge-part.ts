import * as z from 'zod'
import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { fraction, mass, type Quantity, quantityOut, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { propertySources } from '../property-sources.ts'
import { chargeBand } from './charge-band.ts'

const sourceOf = sourceTable(data.sources)

export const retrofitChargeOut = z.strictObject({
  low: quantityOut.describe('80 % of the old charge by mass: common practice'),
  high: quantityOut.describe('90 % of the old charge by mass: common practice'),
  formula: z
    .strictObject({
      use: z.enum(['in-range', 'out-of-range', 'cannot-tell']),
      mass: quantityOut.optional(),
      ofOriginal: quantityOut.optional(),
    })
    .describe('0.9 × old charge − 0.25 lb, in use from 2 to 5 lb: common practice'),
  sameLiquidVolume: z
    .strictObject({ mass: quantityOut, densityRatio: z.number() })
    .describe('Same volume of liquid at 100 °F: computed, an upper end'),
  startWith: quantityOut.describe('Least of these: weigh in this much first'),
  spread: quantityOut.describe('Most less least of these'),
})

/** The charge band of R-134a after R-12. */
export function chargePart(
  original: Quantity<'mass'>,
  from: Refrigerant,
  to: Refrigerant,
  notes: Notes,
): Computed<z.output<typeof retrofitChargeOut>> {
  if (!(original.si > 0)) {
    throw new CalcError('bad-input', 'An old charge of nothing gives no new one.', {
      hint: 'Read the R-12 charge on the label of the machine, such as 3 lb.',
      path: ['labelCharge'],
    })
  }
  const band = chargeBand(original, from, to)
  const { densityRatio, formulaKg, formulaRange, sameVolumeKg, spreadKg } = band
  const [least, most] = spreadKg
  notes.sources.push(
    sourceOf('retrofit-practice'),
    ...propertySources(from),
    ...propertySources(to),
  )
  notes.steps.push(
    {
      what: 'Charge by mass fraction (common practice)',
      formula: '80 to 90 % of the old charge',
      values: { labelCharge: original },
      gives: `${say(mass(band.lowKg))} to ${say(mass(band.highKg))}`,
    },
    {
      what: 'Charge of the same liquid volume (computed)',
      formula: 'old charge × liquid density new ÷ old, at 100 °F',
      values: { labelCharge: original, densityRatio: Number(densityRatio.toFixed(4)) },
      gives: mass(sameVolumeKg),
    },
  )
  if (formulaKg !== undefined) {
    notes.steps.push({
      what: 'Charge by the fixed-offset formula (common practice)',
      formula: '0.9 × old charge − 0.25 lb',
      values: { labelCharge: original },
      gives: mass(formulaKg),
    })
  } else {
    notes.warnings.push({
      code: 'formula-left-out',
      message: data.warnings['formula-left-out'],
    })
  }
  notes.warnings.push({
    code: 'charge-is-a-band',
    message: fillIn(data.warnings['charge-is-a-band'], { spread: say(mass(most - least)) }),
  })
  return {
    low: mass(band.lowKg),
    high: mass(band.highKg),
    formula: {
      use:
        formulaRange === 'inside'
          ? 'in-range'
          : formulaRange === 'cannot-tell'
            ? 'cannot-tell'
            : 'out-of-range',
      mass: formulaKg === undefined ? undefined : mass(formulaKg),
      ofOriginal: formulaKg === undefined ? undefined : fraction(formulaKg / original.si),
    },
    sameLiquidVolume: {
      mass: mass(sameVolumeKg),
      densityRatio: Number(densityRatio.toFixed(4)),
    },
    startWith: mass(least),
    spread: mass(most - least),
  }
}
