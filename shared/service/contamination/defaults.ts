import data from '../../../data/service/contamination.json' with { type: 'json' }
import type { Assumption } from '../../operation.ts'
import { type Quantity, quantity, type Uncertain } from '../../quantity/index.ts'

/** Readings with the uncertainty stated, or that of a shop gauge and thermometer. */
export function withDefaults(
  pressure: Quantity<'absolutePressure'>,
  temperature: Quantity<'temperature'>,
): readonly [Uncertain, Uncertain] {
  const gauge = quantity('pressureDifference', data.gaugePsi, 'psi').si
  const thermometer = quantity('temperatureDifference', data.thermometerF, '°F').si
  return [
    { si: pressure.si, plusMinus: pressure.plusMinus ?? gauge },
    { si: temperature.si, plusMinus: temperature.plusMinus ?? thermometer },
  ]
}

/** What was taken for granted. */
export function assumptionsOf(
  pressure: Quantity<'absolutePressure'>,
  temperature: Quantity<'temperature'>,
): readonly Assumption[] {
  const because = 'no uncertainty was stated; write it like 108 ±0.5 psig'
  return [
    {
      field: 'pressure',
      taken: 'liquid is in it, and pressure and temperature are equal all over',
      because: 'only then does a pressure tell what it is',
    },
    ...(pressure.plusMinus === undefined
      ? [{ field: 'pressure', taken: `gauge ±${data.gaugePsi} psi`, because }]
      : []),
    ...(temperature.plusMinus === undefined
      ? [{ field: 'temperature', taken: `thermometer ±${data.thermometerF} °F`, because }]
      : []),
  ]
}
