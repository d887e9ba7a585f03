import type { Architecture, Conditions } from '../../cycle/index.ts'
import type { Machine } from '../../cycle/types.ts'
import type { Place } from '../../instrument/index.ts'
import { barometricPressure, fraction, mass, temperature } from '../../quantity/index.ts'
import type { View } from './view.ts'

/** How a machine ends up, as it is shown. */
export function outcomeShown({ outcome, running }: View, place: Place) {
  const gauge = (pressurePa: number) => place.gauge(pressurePa).within(undefined)
  return {
    state: outcome.kind,
    ...(outcome.kind === 'cycling'
      ? { by: outcome.by, duty: fraction(outcome.duty), closes: gauge(outcome.closesPa) }
      : {}),
    ...('limitPa' in outcome ? { limit: gauge(outcome.limitPa) } : {}),
    remarks: running?.remarks ?? [],
    bubbles: running?.bubbles,
    storeLevel: running?.storeLevel,
  }
}

/** An invented machine, as it is shown. */
export const machineShown = (
  id: string,
  name: string,
  architecture: Architecture,
  machine: Machine,
) => ({
  id,
  name,
  architecture,
  refrigerant: machine.refrigerant,
  labelCharge: mass(machine.charge),
  highFitting: machine.ports.high,
})

/** The weather and how a machine is run, as they are shown. */
export const conditionsShown = (conditions: Conditions) => ({
  ambient: temperature(conditions.ambientK),
  returnAir: temperature(conditions.returnAirK),
  relativeHumidity: fraction(conditions.returnHumidity),
  compressorRpm: Math.round(conditions.speed * 60),
  condenserFan: fraction(conditions.condenserFan),
  blower: fraction(conditions.blower),
  barometer: barometricPressure(conditions.barometerPa),
})
