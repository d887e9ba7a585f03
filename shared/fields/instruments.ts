import * as z from 'zod'
import data from '../../data/service/instruments.json' with { type: 'json' }
import { quantityIn } from '../quantity/index.ts'

function idsOf<T extends readonly { readonly id: string }[]>(rows: T): [string, ...string[]] {
  const [first = '', ...others] = rows.map((row) => row.id)
  return [first, ...others]
}

const gaugeClass = z.enum(idsOf(data.gauges)).optional()

/** Classes of the gauges in use; a reading with a ± of its own needs none. */
export const gaugesIn = {
  lowGauge: gaugeClass.describe('Accuracy class of the low-side gauge'),
  lowGaugeSpan: quantityIn.pressureDifference
    .optional()
    .describe('Scale of the low-side gauge from end to end, such as 120 psi'),
  highGauge: gaugeClass.describe('Accuracy class of the high-side gauge'),
  highGaugeSpan: quantityIn.pressureDifference
    .optional()
    .describe('Scale of the high-side gauge from end to end, such as 500 psi'),
}

/** Class of the temperature sensor in use, and how far a pipe probe may be off by its contact. */
export const thermometersIn = {
  thermometer: z
    .enum(idsOf(data.thermometers))
    .optional()
    .describe('Class of the temperature sensor, for every temperature'),
  contactError: quantityIn.temperatureDifference
    .optional()
    .describe('How far a pipe probe may be off by its contact, beside the class of its sensor'),
}

/** The scale that weighs refrigerant. */
export const scaleIn = {
  scaleDivision: quantityIn.mass.optional().describe('Smallest step that the scale shows'),
  scaleTolerance: quantityIn.mass.optional().describe('How far the scale can be off'),
}
