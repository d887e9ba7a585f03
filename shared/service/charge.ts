import * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { placeIn, refrigerantIn } from '../fields/index.ts'
import { defineOperation } from '../operation.ts'
import { quantityIn } from '../quantity/index.ts'
import { ALWAYS, computeCharge } from './charge/compute.ts'
import { CASES, itemsIn } from './charge/fields.ts'
import { checkSource } from './charge/line-check.ts'
import { MASS_UNITS } from './charge/mass-text.ts'
import { chargeResult } from './charge/result.ts'

/** How much refrigerant goes back in, as an operation. */
export const charge = defineOperation({
  name: 'charge',
  summary: 'How much refrigerant goes back in after a job',
  description:
    'After couplers were parted, a section was opened, the whole system was opened or pressure was lost: the mass to weigh in, its band, and what to set on the scale. Refuses a correction where only the weighed full charge is right, and never makes up a label charge or the spill volume of a coupling.',
  fields: {
    refrigerant: refrigerantIn,
    case: z
      .enum(CASES)
      .describe(
        'What was done: couplers-parted (both halves seal), section-opened (between closed valves or sealed couplers), system-opened, pressure-lost',
      ),
    want: z
      .enum(['correction', 'full-charge'])
      .optional()
      .describe('What is asked for; a correction is refused where it cannot be right'),
    sealed: z
      .boolean()
      .optional()
      .describe('Whether coupler halves, or the valves at the ends of the section, held tight'),
    labelCharge: quantityIn.mass.optional().describe("Charge on the machine's label"),
    ...itemsIn,
    makerCorrection: quantityIn.mass
      .optional()
      .describe('What the maker says to add for this job or these parts; goes before our own'),
    makerCharge: quantityIn.mass
      .optional()
      .describe("Maker's full charge for the machine as it is now; goes before the label"),
    recovered: quantityIn.mass.optional().describe('Mass that was recovered, as weighed'),
    ambient: quantityIn.temperature
      .optional()
      .describe('Air temperature: of lines at rest, of the service hose, of air taken in'),
    vapourSpace: quantityIn.volume
      .optional()
      .describe('Space that vapour fills at rest, for the pressure of air taken in'),
    chargeTolerance: quantityIn.mass
      .optional()
      .describe("How far the charge may be off, from the machine's maker"),
    scaleResolution: quantityIn.mass.optional().describe('Smallest step that the scale shows'),
    scaleTolerance: quantityIn.mass.optional().describe('How far the scale can be off'),
    serviceHoseBore: quantityIn.length.optional().describe('Bore of the charging hose'),
    serviceHoseLength: quantityIn.length
      .optional()
      .describe('Length of the charging hose between scale and machine'),
    serviceHoseHolds: z
      .enum(['liquid', 'vapour'])
      .optional()
      .describe('What fills that hose when charging ends'),
    serviceHoseStarts: z
      .enum(['empty', 'liquid', 'vapour'])
      .optional()
      .describe('What filled it when the scale was read first; empty means evacuated'),
    massUnit: z.enum(MASS_UNITS).optional().describe('Unit of the masses in the answer'),
    ...placeIn,
  },
  result: chargeResult,
  cautions: { always: [...ALWAYS, 'flammable'], mayAlso: ALL_DANGERS },
  example: {
    refrigerant: 'R-134a',
    case: 'section-opened',
    sealed: true,
    labelCharge: '2 lb 6 oz',
    hoseSize: '#8',
    length: '9 ft ±0.5 ft',
    phase: 'liquid',
    temperature: '110 °F ±5 °F',
    ambient: '75 °F',
    serviceHoseBore: '1/4 in',
    serviceHoseLength: '72 in',
    serviceHoseHolds: 'liquid',
  },
  compute: computeCharge,
})
