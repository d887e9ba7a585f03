import * as z from 'zod'
import { METERING_DEVICES, refrigerantIn } from '../fields/index.ts'
import { quantityIn } from '../quantity/index.ts'
import { CERTIFICATE_IDS } from '../rules/library.ts'
import { COMPRESSORS, MACHINES, PLACES, SECTORS } from '../rules/types.ts'
import { PARTS } from '../service/oil/fields.ts'

export const JOBS = [
  'diagnose',
  'couplers-parted',
  'section-opened',
  'system-opened',
  'pressure-lost',
] as const
export type JobKind = (typeof JOBS)[number]

const MOST_ITEMS = 50
const words = (most: number) => z.string().min(1).max(most)

/** Any fields: the step that they are for refuses what it does not know. */
const section = (operation: string) =>
  z
    .record(z.string().max(60), z.unknown())
    .optional()
    .describe(
      `Fields of the operation ${operation}; what stands elsewhere on the order need not be repeated`,
    )

/** Fields of a coupling in `charge`. */
export const COUPLING_FIELDS = [
  'spillVolume',
  'spillFrom',
  'spillTo',
  'partings',
  'airInclusion',
  'phase',
  'temperature',
  'pressure',
  'quality',
] as const
/** Those that tell what a coupling spilt. */
export const SPILL_FIELDS = ['spillVolume', 'spillFrom', 'spillTo'] as const
/** Fields of an altered part in `charge`. */
export const CHARGE_PART_FIELDS = [
  'old',
  'new',
  'phase',
  'temperature',
  'pressure',
  'quality',
] as const
/** Fields of a replaced part in `oil`. */
export const OIL_PART_FIELDS = ['part', 'makerAmount', 'drained'] as const

/** Fields that a step reads: the step itself refuses what is wrong in them. */
const passed = <K extends string>(operation: string, keys: readonly K[]) =>
  Object.fromEntries(
    keys.map((key) => [key, z.unknown().optional().describe(`As in the operation ${operation}`)]),
  ) as Record<K, z.ZodOptional<z.ZodUnknown>>

const name = words(80).optional().describe('What to call it on the sheet')

export const fields = {
  invented: z
    .boolean()
    .optional()
    .describe('True for a demonstration: nothing on it was measured on a real machine'),
  order: words(80).optional().describe('Number or name of the order'),
  date: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/u, 'A date is written YYYY-MM-DD')
    .optional()
    .describe('Day of the work, YYYY-MM-DD'),
  story: words(2000).optional().describe('What happened and what is asked, in a few sentences'),
  machine: z
    .strictObject({
      name: words(120).describe('What the machine is called in the yard'),
      serial: words(80).optional().describe('Serial or fleet number'),
      hours: words(40).optional().describe('Hour meter or mileage'),
      kind: z.enum(MACHINES).describe('What the system cools'),
      compressor: z
        .enum(COMPRESSORS)
        .optional()
        .describe('open-drive (belt or coupling) or hermetic-or-electric'),
      factorySealed: z
        .boolean()
        .optional()
        .describe('Whether the unit was wholly made, charged and sealed in a factory'),
      sector: z
        .enum(SECTORS)
        .optional()
        .describe('What an off-road machine works at, where the law asks'),
      meteringDevice: z.enum(METERING_DEVICES).optional().describe('What feeds the evaporator'),
    })
    .describe('The machine'),
  refrigerant: refrigerantIn,
  labelCharge: quantityIn.mass.optional().describe("Charge on the machine's label"),
  oilType: words(60).optional().describe('Oil in the system, as its label says'),
  oilTotal: quantityIn.volume.optional().describe("Oil of the whole system, the maker's figure"),
  place: z
    .strictObject({
      law: z.enum(PLACES).optional().describe('Whose law binds the work'),
      altitude: quantityIn.altitude
        .optional()
        .describe('Height of the place above sea level, negative below it'),
      barometer: quantityIn.barometricPressure
        .optional()
        .describe('Barometric pressure at the place, not reduced to sea level'),
      ambient: quantityIn.temperature.optional().describe('Air temperature in the shade'),
    })
    .optional()
    .describe('Where the machine stands'),
  person: z
    .strictObject({
      name: words(120).optional().describe('Who does the work'),
      certificates: z
        .array(z.enum(CERTIFICATE_IDS))
        .max(CERTIFICATE_IDS.length)
        .optional()
        .describe('Certificates held; an empty list says none'),
      forPay: z.boolean().optional().describe('Whether the work is paid in any way'),
      ownMachine: z.boolean().optional().describe("Whether the machine is the worker's own"),
    })
    .optional()
    .describe('Who does the work'),
  job: z
    .enum(JOBS)
    .describe(
      'What was or will be done: diagnose (read only), couplers-parted, section-opened, system-opened, pressure-lost',
    ),
  couplings: z
    .array(
      z.strictObject({
        name,
        ...passed('charge', COUPLING_FIELDS),
        selfSealing: z
          .boolean()
          .optional()
          .describe('Whether both halves close by themselves when parted'),
      }),
    )
    .max(MOST_ITEMS)
    .optional()
    .describe(
      'Couplings that were or will be parted: beside selfSealing, the fields of a coupling in charge',
    ),
  parts: z
    .array(
      z.strictObject({
        name,
        ...passed('charge', CHARGE_PART_FIELDS),
        ...passed('oil', OIL_PART_FIELDS),
        part: z.enum(PARTS).optional().describe('Kind of part; it decides the oil'),
      }),
    )
    .max(MOST_ITEMS)
    .optional()
    .describe('Parts that were or will be replaced: fields of a part in charge and in oil'),
  readings: section('readings'),
  recovery: section('recovery'),
  charge: section('charge'),
  oil: section('oil'),
  leakTest: section('leak-test'),
  evacuation: section('evacuation'),
  charging: section('charging'),
  cooling: section('cooling-check'),
  record: z
    .strictObject({
      charged: quantityIn.mass.optional().describe('Mass that went in, by the scale'),
      chargedFrom: z
        .enum(['new', 'recycled', 'reclaimed'])
        .optional()
        .describe('What was charged: new, recycled or reclaimed refrigerant'),
      oilAdded: quantityIn.volume.optional().describe('Oil that was put in, measured'),
      leakFound: words(300).optional().describe('Where it leaked and what was done; or none found'),
      sentTo: words(300)
        .optional()
        .describe('Name and address of the place that recovered refrigerant was sent to'),
      notes: words(2000).optional().describe('Anything else to keep'),
    })
    .optional()
    .describe('What was done in the end'),
}

/** A work order once parsed; its sections are still as they were written. */
export type WorkOrderInput = z.output<z.ZodObject<typeof fields>>
