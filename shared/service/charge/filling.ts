import type { Assumption, Warning } from '../../operation.ts'
import { type PressureReading, toAbsolute } from '../../quantity/index.ts'
import { combine, type Estimate, reading } from './estimate.ts'
import type { PHASES } from './fields.ts'

/** What fills a space, with its density. */
export interface Filling {
  readonly phase: (typeof PHASES)[number]
  /** kg/m³ */
  readonly density: Estimate
  /** In words: "liquid, saturated at its temperature". */
  readonly how: string
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** A pressure reading as an absolute pressure, Pa. */
export const absolute = (pressure: PressureReading, barometerPa: number): Estimate => {
  // Refused here once, so that a reading below a perfect vacuum is named before any density.
  toAbsolute(pressure, barometerPa)
  const offset = pressure.kind === 'gaugePressure' ? barometerPa : 0
  return combine([reading(pressure)], ([value = 0]) => value + offset)
}
