import type { Quantity, Uncertain } from '../../quantity/index.ts'
import type { Measured } from './measured.ts'

/** The highest pressure that was read, as a gauge shows it here. */
export function highestGauge(m: Measured): Quantity<'gaugePressure'> | undefined {
  const read = [m.suctionPressure, m.highPressure, m.dischargePressure].flatMap((reading) =>
    reading === undefined
      ? []
      : reading.kind === 'gaugePressure'
        ? [reading as Quantity<'gaugePressure'>]
        : [m.place.gauge(reading.si, reading.plusMinus)],
  )
  return read.reduce<Quantity<'gaugePressure'> | undefined>(
    (most, next) => (most === undefined || next.si > most.si ? next : most),
    undefined,
  )
}

/** The low side against the air around, Pa. */
export function suctionGauge(m: Measured): Uncertain | undefined {
  const reading = m.suctionPressure
  if (!reading) return undefined
  return reading.kind === 'gaugePressure' ? reading : m.place.gauge(reading.si, reading.plusMinus)
}
