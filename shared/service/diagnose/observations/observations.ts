import type { Feature, Observation } from '../../../diagnosis/features.ts'
import type { Place } from '../../../instrument/index.ts'
import type { PressureReading, Quantity } from '../../../quantity/index.ts'
import {
  type Refrigerant,
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../../refrigerant/index.ts'

type Temperature = Quantity<'temperature'> | undefined

/** Readings of a running machine, each with its ±, and the side of the condenser that its high side was read on. */
export interface Running {
  readonly suctionPressure: PressureReading | undefined
  readonly highPressure: PressureReading | undefined
  readonly highFrom: 'liquid-line' | 'discharge-line'
  readonly temperatures: Readonly<Partial<Record<Feature, Temperature>>>
}

/** A thermometer in a duct and a probe on a pipe that vibrates are never better than this, K, 1 σ. */
const LEAST_SIGMA_K = 0.3
/** As far as a service gauge repeats, Pa, 1 σ. */
const LEAST_SIGMA_PA = 1500

/**
 * What was read, as the model shows it, 1 σ: a ± of the project is two of them. Pressures of a
 * refrigerant that the model has no machine with become those of the model's at the same
 * saturation temperature.
 *
 * @throws {CalcError} `above-critical` and such where the model's refrigerant has no such state.
 */
export function observationsOf(
  { suctionPressure, highPressure, temperatures }: Running,
  place: Place,
  own: Refrigerant,
  modelRefrigerant: string,
): readonly Observation[] {
  const model = refrigerant(modelRefrigerant)
  const pressure = (
    feature: Feature,
    reading: PressureReading | undefined,
    line: 'dew' | 'bubble',
  ): readonly Observation[] => {
    if (reading === undefined) return []
    const { si, plusMinus = 0 } = place.absolute(reading)
    const as = (pa: number) =>
      model.info.id === own.info.id
        ? pa
        : saturationPressure(model, saturationTemperature(own, pa, line), line)
    const value = as(si)
    const slope = model.info.id === own.info.id ? 1 : (as(si * 1.01) - value) / (0.01 * si)
    return [{ feature, value, sigma: Math.max(LEAST_SIGMA_PA, (slope * plusMinus) / 2) }]
  }
  return [
    ...pressure('lowSidePa', suctionPressure, 'dew'),
    ...pressure('highSidePa', highPressure, 'bubble'),
    ...(Object.entries(temperatures) as [Feature, Temperature][]).flatMap(([feature, read]) =>
      read === undefined
        ? []
        : [
            {
              feature,
              value: read.si,
              sigma: Math.max(LEAST_SIGMA_K, (read.plusMinus ?? 0) / 2),
            },
          ],
    ),
  ]
}

/** How well a charge is known that was recovered and weighed, as a share, 1 σ: what stays behind, from memory. */
const LEFT_BEHIND = 0.02

/** The charge that came out, as a share of the label's. */
export function weighedObservation(
  recovered: Quantity<'mass'> | undefined,
  labelCharge: Quantity<'mass'> | undefined,
): readonly Observation[] {
  if (!recovered || !labelCharge || labelCharge.si <= 0) return []
  const scale = (recovered.plusMinus ?? 0) / 2 / labelCharge.si
  return [
    {
      feature: 'chargeShare',
      value: recovered.si / labelCharge.si,
      sigma: Math.hypot(LEFT_BEHIND, scale),
    },
  ]
}
