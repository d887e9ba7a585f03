import data from '../../../data/service/charge-bands.json' with { type: 'json' }
import { quantity } from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { readingSource } from './sources.ts'

const kelvin = (fahrenheit: number) => quantity('temperatureDifference', fahrenheit, '°F').si

export interface Band {
  /** K */
  readonly lowK: number
  /** K */
  readonly highK: number
  readonly sources: readonly Source[]
}

const { vehicleValveSubcooling, subcoolingTolerance, meteringSuperheat, dischargeHottest } =
  data.bands

/** Subcooling of a vehicle system with an expansion valve, and the refrigerants it is published for. */
export const VEHICLE_VALVE_SUBCOOLING: Band & { readonly refrigerants: readonly string[] } = {
  lowK: vehicleValveSubcooling.lowK,
  highK: vehicleValveSubcooling.highK,
  refrigerants: vehicleValveSubcooling.refrigerants,
  sources: [readingSource('sae-j3023')],
}

/** How far a subcooling may stand from its target, K. */
export const SUBCOOLING_TOLERANCE_K = kelvin(subcoolingTolerance.plusMinusF)
export const SUBCOOLING_TOLERANCE_SOURCES = [
  readingSource('ra3.2-2008'),
  readingSource('subcooling-within-3-f'),
]

/** Superheat of a metering valve whose maker's range is unknown. */
export const METERING_SUPERHEAT: Band = {
  lowK: kelvin(meteringSuperheat.lowF),
  highK: kelvin(meteringSuperheat.highF),
  sources: [readingSource('ra3.2-2008')],
}

/**
 * Superheat below which an outlet counts as flooded, K: the least that a metering device may keep.
 * No width of its own is published.
 */
export const FLOODED_BELOW_K = METERING_SUPERHEAT.lowK
export const FLOODED_SOURCES = METERING_SUPERHEAT.sources

/** Discharge-line temperature above which the oil suffers, K; common practice, no source. */
export const DISCHARGE_HOTTEST_K = quantity('temperature', dischargeHottest.highF, '°F').si
