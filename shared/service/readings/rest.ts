import { CalcError } from '../../errors.ts'
import type { Warning } from '../../operation.ts'
import { type AtRest, atRest } from '../../physics/at-rest.ts'
import {
  type PressureReading,
  pressureDifference,
  type Quantity,
  type Uncertain,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Figures } from './figures.ts'
import type { Finding } from './findings.ts'
import type { Measured } from './measured.ts'
import { TEXTS } from './texts.ts'

/** Both gauges read alike: a machine at rest, or one that does not pump. */
export interface Rest {
  readonly pressure: PressureReading
  readonly air: Quantity<'temperature'> | undefined
  /** Against saturation at the air's temperature; undefined without it, or where there is none. */
  readonly against: AtRest | undefined
  readonly warnings: readonly Warning[]
}

/**
 * The pressure at rest against saturation at the temperature of the air, as every step judges it.
 *
 * @returns undefined for a machine whose gauges differ.
 */
export function restOf(m: Measured, f: Figures, found: readonly Finding[]): Rest | undefined {
  const pressure = m.suctionPressure
  if (!pressure || !f.low || !found.some(({ id }) => id === 'no-pressure-difference')) {
    return undefined
  }
  const frame = { pressure, air: m.ambient, against: undefined, warnings: [] }
  if (!m.ambient) return frame
  try {
    return {
      ...frame,
      against: atRest(m.refrigerant, m.place.absolute(pressure), m.ambient),
    }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const message = fillIn(TEXTS.warnings['rest-not-compared'], { why: error.message })
    return { ...frame, warnings: [{ code: 'rest-not-compared', message }] }
  }
}

/** What is shown of it. */
export function restResult({ air, against }: Rest, m: Measured) {
  if (!against || !air) return undefined
  const shown = (pressure: Uncertain | undefined) =>
    pressure && m.place.gauge(pressure.si, pressure.plusMinus)
  return {
    state: against.state,
    temperature: air,
    bubblePressure: shown(against.bubble),
    dewPressure: shown(against.dew),
    off: against.off && pressureDifference(against.off.si, against.off.plusMinus),
    from: against.from,
  }
}

/** Saturation nearer to the pressure, as a gauge would show it here. */
export const nearestLine = ({ against }: Rest, m: Measured) => {
  const line = against?.from === 'dew' ? against.dew : against?.bubble
  return line && m.place.gauge(line.si, line.plusMinus)
}
