import { CalcError } from '../errors.ts'
import type { Assumption, Warning } from '../operation.ts'
import {
  propagate,
  type Quantity,
  quantityIn,
  SEA_LEVEL_PA,
  standardAtmosphere,
} from '../quantity/index.ts'
import type { Source } from '../sources.ts'
import { say } from './say.ts'

/** Where the machine stands: every step that reads a gauge takes these two fields. */
export const placeIn = {
  altitude: quantityIn.altitude
    .optional()
    .describe('Height of the place above sea level, negative below it'),
  barometer: quantityIn.barometricPressure
    .optional()
    .describe(
      'Barometric pressure at the place, not reduced to sea level; it goes before the altitude',
    ),
}

export interface Place {
  readonly altitude?: Quantity<'altitude'> | undefined
  readonly barometer?: Quantity<'barometricPressure'> | undefined
}

export interface ResolvedPlace {
  /** Pressure of the surrounding air, Pa absolute. */
  readonly barometerPa: number
  /** Expanded uncertainty of it, Pa, where the user gave one with the barometer or the altitude. */
  readonly plusMinusPa: number | undefined
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
  /** The standard atmosphere, where it was used. */
  readonly sources: readonly Source[]
}

const STANDARD_ATMOSPHERE: Source = {
  id: 'us-standard-atmosphere-1976',
  title: 'US Standard Atmosphere 1976 (ISO 2533:1975), equation 33a',
  mark: 'computed',
}

/** Weather moves a station's barometer by about 3 kPa around the standard atmosphere (common practice). */
const WEATHER_PA = 3_000
/** Outside these no one works: the standard atmosphere of 11 000 m, and more than any weather at the lowest shore. */
const LOWEST_PA = 22_600
const HIGHEST_PA = 115_000

/**
 * The barometric pressure that joins gauge and absolute readings.
 *
 * The barometer wins over the altitude; an altitude means the standard atmosphere; with neither,
 * sea level is taken and listed under `assumptions`. A barometer that contradicts the altitude by
 * more than 3 kPa gives a warning, since it may have been reduced to sea level.
 *
 * @throws {CalcError} `out-of-range` for a barometer outside 22.6 to 115 kPa or an altitude above 11 000 m.
 */
export function resolveBarometer({ altitude, barometer }: Place): ResolvedPlace {
  if (barometer) {
    if (!(barometer.si >= LOWEST_PA && barometer.si <= HIGHEST_PA)) {
      throw new CalcError(
        'out-of-range',
        `A barometric pressure of ${kPa(barometer.si)} is outside ${kPa(LOWEST_PA)} to ${kPa(HIGHEST_PA)}.`,
        {
          path: ['barometer'],
          hint: 'Give the pressure of the air at the place, such as 29.92 inHg or 1013 hPa, or the altitude instead.',
        },
      )
    }
    return {
      barometerPa: barometer.si,
      plusMinusPa: barometer.plusMinus,
      assumptions: [],
      warnings: altitude ? contradiction(barometer.si, standardAt(altitude)) : [],
      sources: altitude ? [STANDARD_ATMOSPHERE] : [],
    }
  }
  if (altitude) {
    return {
      barometerPa: standardAt(altitude),
      plusMinusPa: propagate([altitude], standardAtmosphere).plusMinus,
      assumptions: [],
      warnings: [],
      sources: [STANDARD_ATMOSPHERE],
    }
  }
  return {
    barometerPa: SEA_LEVEL_PA,
    plusMinusPa: undefined,
    assumptions: [
      {
        field: 'altitude',
        taken: 'sea level, 29.92 inHg (101.325 kPa)',
        because: 'neither altitude nor barometer was given',
      },
    ],
    warnings: [],
    sources: [STANDARD_ATMOSPHERE],
  }
}

function standardAt(altitude: Quantity<'altitude'>): number {
  try {
    return standardAtmosphere(altitude.si)
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    throw new CalcError(
      error.code,
      `An altitude of ${say(altitude)} is outside -1000 to 11000 m (-3280 to 36090 ft).`,
      { path: ['altitude'], hint: error.hint },
    )
  }
}

function contradiction(barometerPa: number, standardPa: number): readonly Warning[] {
  if (Math.abs(barometerPa - standardPa) <= WEATHER_PA) return []
  return [
    {
      code: 'barometer-contradicts-altitude',
      message: `The barometer of ${kPa(barometerPa)} is ${kPa(Math.abs(barometerPa - standardPa))} away from the ${kPa(standardPa)} of the standard atmosphere at this altitude, more than weather explains. The barometer was used; check that it is the station pressure and not reduced to sea level, as weather reports give it.`,
    },
  ]
}

const kPa = (pressurePa: number) => `${(pressurePa / 1000).toFixed(1)} kPa`
