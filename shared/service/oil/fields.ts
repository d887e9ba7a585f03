import * as z from 'zod'
import {
  compressorDriveIn,
  existingOilIn,
  labelChargeIn,
  newOilIn,
  oilTotalIn,
  refrigerantIn,
} from '../../fields/index.ts'
import { quantityIn } from '../../quantity/index.ts'
import { TABLE_PARTS } from './amounts.ts'
import { COMPRESSOR_RULES } from './compressor.ts'
import { LONG_HOSE_RULES } from './long-hose.ts'

export const PARTS = [...TABLE_PARTS, 'compressor'] as const
const MOST_PARTS = 30

const part = z.strictObject({
  part: z.enum(PARTS).describe('Which part was replaced'),
  name: z.string().min(1).max(80).optional().describe('What to call it in the answer'),
  makerAmount: quantityIn.volume
    .optional()
    .describe("Oil that the machine's maker prints for this part; overrides the table"),
  drained: quantityIn.volume.optional().describe('Oil drained from the old part'),
})
export type ReplacedPart = z.output<typeof part>

export const oilFields = {
  refrigerant: refrigerantIn,
  replaced: z
    .array(z.enum(PARTS))
    .max(MOST_PARTS)
    .optional()
    .describe('Parts that were replaced, as often as replaced'),
  parts: z
    .array(part)
    .max(MOST_PARTS)
    .optional()
    .describe("Replaced parts with the maker's amount or what was drained"),
  compressorRule: z
    .enum(COMPRESSOR_RULES)
    .optional()
    .describe('Published rule for a new compressor; drained-or-2-fl-oz-below-1 when not given'),
  compressorDrained: quantityIn.volume
    .optional()
    .describe('Oil drained from the old compressor, measured'),
  compressorHolds: quantityIn.volume
    .optional()
    .describe('Oil in the new compressor as it was delivered'),
  accumulatorDrained: quantityIn.volume
    .optional()
    .describe('Oil drained from the old accumulator, measured'),
  leak: z
    .enum(['none', 'slow', 'sudden'])
    .optional()
    .describe('How refrigerant was lost: a slow leak leaves the oil, a sudden one takes it along'),
  recoveredOil: quantityIn.volume
    .optional()
    .describe('Oil that came out with the recovered refrigerant, measured'),
  flushed: z
    .boolean()
    .default(false)
    .describe('Whether the whole system was flushed: then its full quantity goes in'),
  oilTotal: oilTotalIn.optional(),
  longHose: z
    .enum(LONG_HOSE_RULES)
    .optional()
    .describe('Published formula for a system with long hoses'),
  labelCharge: labelChargeIn
    .describe('Refrigerant charge, for the formulas that go by it')
    .optional(),
  longHoseLength: quantityIn.length
    .optional()
    .describe('Length of all hoses, for the formula that goes by it'),
  newOil: newOilIn.optional(),
  existingOil: existingOilIn.optional(),
  compressorDrive: compressorDriveIn.optional(),
  volumeUnit: z.enum(['fl-oz', 'mL']).optional().describe('Unit of the volumes in the answer'),
}

export type OilInput = z.output<z.ZodObject<typeof oilFields>>
