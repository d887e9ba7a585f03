import { type Place, reader } from '../../../instrument/index.ts'
import type { Notes } from '../../../notes.ts'
import type { Quantity } from '../../../quantity/index.ts'
import type { DiagnoseInput, RunningInput } from '../input/fields.ts'
import { type Weather, weatherOf } from '../input/weather.ts'
import type { Running } from './observations.ts'

/** One test, as read: its readings with their ±, and its conditions. */
export interface Test {
  readonly running: Running
  readonly weather: Weather
  readonly ambient: Quantity<'temperature'> | undefined
}

/**
 * Readings and conditions of one test through the instruments.
 *
 * @param under - Name of the section that they stand in, with a dot; empty for the test of today.
 */
export function takenIn(
  input: RunningInput,
  instruments: DiagnoseInput,
  place: Place,
  notes: Pick<Notes, 'assumptions' | 'sources'>,
  under = '',
): Test {
  const take = reader(instruments, notes)
  const pipe = (field: keyof RunningInput & string) =>
    take(input[field] as Quantity<'temperature'> | undefined, 'pipe-probe', `${under}${field}`)
  const air = (field: keyof RunningInput & string) =>
    take(input[field] as Quantity<'temperature'> | undefined, 'thermometer', `${under}${field}`)
  const ambient = air('ambient')
  const liquid = take(input.liquidPressure, 'high-side-gauge', `${under}liquidPressure`)
  const discharge = take(input.dischargePressure, 'high-side-gauge', `${under}dischargePressure`)
  return {
    running: {
      suctionPressure: take(
        input.suctionPressure,
        instruments.lowGauge === undefined ? 'a-gauge' : 'low-side-gauge',
        `${under}suctionPressure`,
      ),
      highPressure: discharge ?? liquid,
      highFrom: discharge ? 'discharge-line' : 'liquid-line',
      temperatures: {
        suctionLineK: pipe('suctionTemperature'),
        liquidLineK: pipe('liquidTemperature'),
        deviceInletK: pipe('valveInletTemperature'),
        evaporatorOutletK: pipe('evaporatorOutletTemperature'),
        dischargeLineK: pipe('dischargeTemperature'),
        ventK: air('ventTemperature'),
        condenserAirK: air('condenserOutAir'),
      },
    },
    weather: weatherOf(
      input,
      { ambient, returnAir: air('returnAir'), wetBulb: air('returnWetBulb') },
      place,
    ),
    ambient,
  }
}
