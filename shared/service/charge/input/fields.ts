import * as z from 'zod'
import {
  ambientIn,
  chargeToleranceIn,
  choiceIn,
  compressorDriveIn,
  gaugesIn,
  labelChargeIn,
  type OpeningJob,
  openingJobIn,
  placeIn,
  recoveredIn,
  refrigerantIn,
  scaleIn,
  serviceHoseIn,
  thermometersIn,
} from '../../../fields/index.ts'
import { quantityIn } from '../../../quantity/index.ts'
import { contentsIn, couplingItem, geometryIn, partItem, sectionItem, spillIn } from './items.ts'
import { MOST_ITEMS } from './most-items.ts'
import { partedIn } from './parted.ts'

export const COUPLING_TYPES = ['two-valve', 'one-valve', 'no-valve', 'diaphragm'] as const
export const MASS_UNITS = ['lb', 'oz', 'g', 'kg'] as const

/** Fields of one coupling, one section or one altered part stand at the top; lists take several. */
const itemsIn = {
  couplingType: choiceIn(COUPLING_TYPES, {
    'self-sealing': 'two-valve',
    poppet: 'two-valve',
    'spring-lock': 'no-valve',
    pierced: 'diaphragm',
    'single-use': 'diaphragm',
  })
    .optional()
    .describe(
      'What closes the parted halves: two-valve (a valve in each), one-valve, no-valve, or diaphragm (cut open on joining)',
    ),
  couplingsOn: choiceIn(['liquid-line', 'suction-line', 'both-lines'], {
    liquid: 'liquid-line',
    suction: 'suction-line',
    'vapour-line': 'suction-line',
    both: 'both-lines',
  })
    .optional()
    .describe('Which lines were parted, one coupling each; for anything else list the couplings'),
  parted: partedIn.optional(),
  suctionDry: z
    .boolean()
    .optional()
    .describe('Whether the suction line is surely dry vapour: warmer than the rest, engine off'),
  coldest: quantityIn.temperature
    .optional()
    .describe('Coldest temperature that the parted lines can have had'),
  ...spillIn,
  whatIf: z
    .boolean()
    .default(false)
    .describe('Answer a range from spillFrom and spillTo, marked as a what-if'),
  ...geometryIn,
  ...contentsIn,
  oldVolume: quantityIn.volume
    .optional()
    .describe('Inner volume of the one part that was replaced'),
  newVolume: quantityIn.volume.optional().describe('Inner volume of the part put in its place'),
  couplings: z
    .array(couplingItem)
    .max(MOST_ITEMS)
    .optional()
    .describe('Couplings that were parted'),
  sections: z
    .array(sectionItem)
    .max(MOST_ITEMS)
    .optional()
    .describe('Sections that were emptied between closed valves or sealed couplers'),
  parts: z
    .array(partItem)
    .max(MOST_ITEMS)
    .optional()
    .describe('Parts whose inner volume changed, with what fills them in operation'),
}

export const chargeFields = {
  refrigerant: refrigerantIn,
  job: openingJobIn.optional(),
  want: z
    .enum(['correction', 'full-charge'])
    .optional()
    .describe('What is asked for; a correction is refused where it cannot be right'),
  sealed: z
    .boolean()
    .optional()
    .describe(
      'Whether coupler halves, or the valves at the ends of the section, held tight: no for a hiss that goes on',
    ),
  labelCharge: labelChargeIn.optional(),
  ...itemsIn,
  makerCorrection: quantityIn.mass
    .optional()
    .describe('What the maker says to add for this job or these parts; overrides our own'),
  makerCharge: quantityIn.mass
    .optional()
    .describe("Maker's full charge for the machine as it is now; overrides the label"),
  recovered: recoveredIn.optional(),
  ambient: ambientIn.optional(),
  vapourSpace: quantityIn.volume
    .optional()
    .describe('Space that vapour fills at rest, for the pressure of air let in'),
  chargeTolerance: chargeToleranceIn.optional(),
  compressorDrive: compressorDriveIn.optional(),
  ...scaleIn,
  ...serviceHoseIn,
  massUnit: z.enum(MASS_UNITS).optional().describe('Unit of the masses in the answer'),
  ...placeIn,
  ...gaugesIn,
  ...thermometersIn,
}

/** What is asked; the job follows from couplings where it was not named. */
export type AskedCharge = z.output<z.ZodObject<typeof chargeFields>>
export type ChargeInput = AskedCharge & { readonly job: OpeningJob }
