import * as z from 'zod'
import {
  ambientIn,
  choiceIn,
  compressorDriveIn,
  dateIn,
  existingOilIn,
  factorySealedIn,
  gaugesIn,
  jobIn,
  labelChargeIn,
  lawIn,
  machineIn,
  meteringDeviceIn,
  oilTotalIn,
  personIn,
  placeIn,
  refrigerantIn,
  scaleIn,
  sectorIn,
  thermometersIn,
} from '../fields/index.ts'
import { quantityIn } from '../quantity/index.ts'
import { couplingItem, partItem } from '../service/charge/input/items.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { runningIn } from '../service/diagnose/input/fields.ts'
import { diagnose } from '../service/diagnose.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oilFields, PARTS } from '../service/oil/fields.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'

/** Version of the file of an order; orders without one are older and are read all the same. */
export const VERSION = 2

const MOST_ITEMS = 50
const words = (most: number) => z.string().min(1).max(most)
/** A number is taken where people write one: hours, serial and order numbers. */
const wordsOrNumber = (most: number) =>
  z.union([words(most), z.number().transform((value) => String(value))])

/** Fields of an operation as an order takes them: what stands on its head need not be repeated. */
const section = <F extends z.core.$ZodLooseShape>(name: string, fields: F) =>
  z
    .strictObject(fields)
    .partial()
    .optional()
    .describe(`Fields of ${name}; what stands elsewhere on the order need not be repeated`)

const { baseline: _, ...diagnosisIn } = diagnose.fields

const replaced = oilFields.parts.unwrap().element.shape
const name = words(80).optional().describe('What to call it on the card')

export const fields = {
  version: z.literal(VERSION).optional().describe('Version of the file'),
  invented: z
    .boolean()
    .optional()
    .describe('True for a demonstration: nothing on it was measured on a real machine'),
  order: wordsOrNumber(80).optional().describe('Number or name of the order'),
  date: dateIn.optional(),
  story: words(2000).optional().describe('What happened and what is asked, in a few sentences'),
  machine: z
    .strictObject({
      name: words(120).describe('What the machine is called in the yard'),
      serial: wordsOrNumber(80).optional().describe('Serial or fleet number'),
      hours: wordsOrNumber(40).optional().describe('Hour meter or mileage'),
      kind: machineIn,
      sector: sectorIn.optional(),
      compressorDrive: compressorDriveIn.optional(),
      factorySealed: factorySealedIn.optional(),
      meteringDevice: meteringDeviceIn.optional(),
    })
    .describe('The machine'),
  refrigerant: refrigerantIn,
  labelCharge: labelChargeIn.optional(),
  existingOil: existingOilIn.optional(),
  oilTotal: oilTotalIn.optional(),
  place: z
    .strictObject({ law: lawIn.optional(), ...placeIn, ambient: ambientIn.optional() })
    .optional()
    .describe('Where the machine stands'),
  person: z
    .strictObject({
      name: words(120).optional().describe('Who does the work'),
      ...personIn,
    })
    .optional()
    .describe('Who does the work'),
  instruments: z
    .strictObject({ ...gaugesIn, ...thermometersIn, ...scaleIn })
    .optional()
    .describe('Gauges, thermometers and scale in use, for every step'),
  job: jobIn,
  cabOff: z.boolean().optional().describe('Whether the cab is lifted or tilted for it'),
  couplings: z
    .array(
      couplingItem.extend({
        couplingType: charge.fields.couplingType,
        name,
      }),
    )
    .max(MOST_ITEMS)
    .optional()
    .describe('Couplings that were or will be parted: fields of a coupling in charge'),
  parts: z
    .array(
      partItem.extend({
        part: choiceIn(PARTS).optional().describe('Kind of part; it decides the oil'),
        makerAmount: replaced.makerAmount,
        drained: replaced.drained,
        name,
      }),
    )
    .max(MOST_ITEMS)
    .optional()
    .describe('Parts that were or will be replaced: fields of a part in charge and in oil'),
  readingsBefore: section('readings', readings.fields).describe(
    'Fields of readings, as taken before the work',
  ),
  readings: section('readings', readings.fields),
  baseline: section('diagnose', runningIn).describe(
    'Readings of this machine when it was sound, with their air and speed: keep them for the next time it cools badly',
  ),
  diagnosis: section('diagnose', diagnosisIn),
  recovery: section('recovery', recovery.fields),
  charge: section('charge', charge.fields),
  oil: section('oil', oilFields),
  leakTest: section('leak-test', leakTest.fields),
  evacuation: section('evacuation', evacuation.fields),
  charging: section('charging', charging.fields),
  cooling: section('cooling-check', coolingCheck.fields),
  record: z
    .strictObject({
      charged: quantityIn.mass.optional().describe('Mass that went in, by the scale'),
      chargedFrom: choiceIn(['new', 'recycled', 'reclaimed'])
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

/** A work order once parsed. */
export type WorkOrderInput = z.output<z.ZodObject<typeof fields>>
