import * as z from 'zod'
import { quantityIn } from '../quantity/index.ts'

export const existingOilIn = z
  .string()
  .min(1)
  .max(60)
  .describe('Oil that is in the machine, as its label says: PAG 46, POE …')
export const newOilIn = z.string().min(1).max(60).describe('Oil to pour in: PAG 46, POE, SP-10 …')
export const oilTotalIn = quantityIn.volume.describe(
  "The system's total oil, the maker's figure; nothing goes above it",
)
