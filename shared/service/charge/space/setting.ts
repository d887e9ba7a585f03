import type { Place } from '../../../instrument/index.ts'
import type { Notes } from '../../../notes.ts'
import {
  combine,
  type PressureReading,
  type Tied,
  tied,
  toAbsolute,
} from '../../../quantity/index.ts'
import type { Refrigerant } from '../../../refrigerant/index.ts'
import type { Densities } from './densities.ts'

/** What every part of the calculation stands on. */
export interface Setting {
  readonly r: Refrigerant
  readonly densities: Densities
  readonly place: Place
  readonly notes: Notes
  /** Set where the barometer came in, so that the place is told only where it counted. */
  usesPlace: boolean
}

/** A pressure reading as an absolute pressure, Pa; all gauge readings share the one barometer. */
export function absolutePa(setting: Setting, pressure: PressureReading, name: string): Tied {
  const { place } = setting
  // Refused here once, so that a reading below a perfect vacuum is named before any density.
  toAbsolute(pressure, place.barometerPa)
  const reading = tied(pressure, name)
  if (pressure.kind === 'absolutePressure') return reading
  setting.usesPlace = true
  return combine([reading, tied(place.barometer, place.barometer.name)], (gauge = 0, air = 0) =>
    Math.max(gauge + air, 0),
  )
}
