import { type AtRest, atRest } from '../../physics/at-rest.ts'
import { propagate, type Uncertain, widthOf } from '../../quantity/index.ts'
import {
  density,
  densityUncertainty,
  type Refrigerant,
  saturatedDensity,
} from '../../refrigerant/index.ts'

interface ExpectedMass {
  readonly basis: 'vapour-only' | 'liquid-present'
  /** Least and most that can come out, kg. */
  readonly leastKg: number
  readonly mostKg: number
  readonly found: AtRest
}

/**
 * What is in a resting system, from its pressure, temperature and inner volume.
 *
 * Surely below the dew pressure there is only vapour, and the mass is density × volume, with the ± of
 * the readings and of the density itself. At saturation liquid is present and the pressure says
 * nothing about how much: the answer then spans from vapour alone to liquid alone.
 *
 * @param temperature - K with its expanded uncertainty.
 * @param pressure - Pa absolute with its expanded uncertainty, that of the barometer included.
 * @throws {CalcError} as the properties do outside their range.
 */
export function massAtRest(
  r: Refrigerant,
  temperature: Uncertain,
  pressure: Uncertain,
  volume: Uncertain,
): ExpectedMass {
  const found = atRest(r, pressure, temperature)
  if (found.state !== 'below') {
    const ofVolume = widthOf(volume)
    return {
      basis: 'liquid-present',
      leastKg: saturatedDensity(r, temperature.si, 'vapour') * (volume.si - ofVolume),
      mostKg: saturatedDensity(r, temperature.si, 'liquid') * (volume.si + ofVolume),
      found,
    }
  }
  const vapour = propagate(
    [pressure, temperature, volume],
    (pa, kelvin, m3) => density(r, kelvin, pa, 'vapour') * m3,
  )
  const own = vapour.si * densityUncertainty(r, 'vapour')
  const width = Math.min(Math.hypot(widthOf(vapour), own), vapour.si)
  return {
    basis: 'vapour-only',
    leastKg: vapour.si - width,
    mostKg: vapour.si + width,
    found,
  }
}
