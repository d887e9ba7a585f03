import { propagate, type Uncertain } from '../../quantity/index.ts'
import {
  density,
  type Refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../refrigerant/index.ts'

interface ExpectedMass {
  readonly basis: 'label-charge' | 'vapour-only' | 'liquid-present'
  /** Least and most that can come out, kg. */
  readonly leastKg: number
  readonly mostKg: number
}

/** SAE J2788: share that a machine takes out within 30 minutes. */
export const J2788_SHARE = 0.95

/**
 * What is in a resting system, from its pressure, temperature and internal volume.
 *
 * Below the dew pressure by more than the readings' uncertainty there is only vapour, and the mass is
 * density × volume. At saturation liquid is present and the pressure says nothing about how much:
 * the answer then spans from vapour alone to liquid alone.
 *
 * @param temperatureK - K with its expanded uncertainty.
 * @param pressurePa - Pa absolute with its expanded uncertainty.
 * @throws {CalcError} as the properties do outside their range.
 */
export function massAtRest(
  r: Refrigerant,
  temperatureK: Uncertain,
  pressurePa: Uncertain,
  volumeM3: number,
): ExpectedMass {
  const belowDew = propagate(
    [pressurePa, temperatureK],
    (pa, kelvin) => saturationPressure(r, kelvin, 'dew') - pa,
  )
  if (belowDew.si > (belowDew.plusMinus ?? 0)) {
    const found = propagate(
      [pressurePa, temperatureK],
      (pa, kelvin) => density(r, kelvin, pa, 'vapour') * volumeM3,
    )
    const width = Math.min(found.plusMinus ?? 0, found.si)
    return { basis: 'vapour-only', leastKg: found.si - width, mostKg: found.si + width }
  }
  return {
    basis: 'liquid-present',
    leastKg: saturatedDensity(r, temperatureK.si, 'vapour') * volumeM3,
    mostKg: saturatedDensity(r, temperatureK.si, 'liquid') * volumeM3,
  }
}
