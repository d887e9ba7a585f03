import type { Assumption } from '../operation.ts'
import { SEA_LEVEL_PA } from '../quantity/index.ts'

/**
 * Absolute pressure, Pa, that a printed gauge pressure stands for: printed tables are those of a gauge
 * at sea level unless their source says otherwise, so at altitude a gauge shows more for the same.
 */
export const printedPa = (gaugePa: number): number => gaugePa + SEA_LEVEL_PA

/** Listed wherever a printed gauge pressure is compared with a reading. */
export const PRINTED_AT_SEA_LEVEL: Assumption = {
  field: 'altitude',
  taken:
    'printed gauge pressures are those of a gauge at sea level, compared as absolute pressures',
  because: 'printed tables name no altitude',
  short: 'printed gauge pressures at sea level',
}
