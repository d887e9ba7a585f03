import data from '../../data/service/instruments.json' with { type: 'json' }
import { CalcError } from '../errors.ts'
import type { Assumption, Warning } from '../operation.ts'
import {
  absolutePressure,
  barometricPressure,
  type Ingredient,
  type PressureReading,
  propagate,
  type Quantity,
  quantity,
  SEA_LEVEL_PA,
  say,
  standardAtmosphere,
  toAbsolute,
  toGauge,
  widthOf,
} from '../quantity/index.ts'
import { sourceTable } from '../source-table.ts'
import type { Source } from '../sources.ts'
import { withInstrument } from './instrument.ts'

/** Where the machine stands, as the user gives it. */
export interface PlaceGiven {
  readonly altitude?: Quantity<'altitude'> | undefined
  readonly barometer?: Quantity<'barometricPressure'> | undefined
}

/**
 * The air around the machine, which joins gauge and absolute pressure.
 *
 * Its uncertainty (altitude, barometer, weather) goes into every pressure that is turned from one
 * into the other here. Two readings under one barometer share its error: to propagate a figure of
 * both, give `barometer` as one ingredient beside the readings, and turn them by `toAbsolute`.
 */
export interface Place {
  /** Pressure of the surrounding air, Pa absolute. */
  readonly barometerPa: number
  /** Expanded uncertainty of it, Pa. */
  readonly plusMinusPa: number
  readonly barometer: Ingredient
  /** The same as a quantity, to be shown. */
  readonly air: Quantity<'barometricPressure'>
  /** A reading as an absolute pressure, with the barometer's uncertainty where it is a gauge reading. */
  absolute(reading: PressureReading): Quantity<'absolutePressure'>
  /** What a gauge shows here for an absolute pressure (Pa), with the barometer's uncertainty. */
  gauge(pressurePa: number, plusMinusPa?: number): Quantity<'gaugePressure'>
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
  readonly sources: readonly Source[]
}

const sourceOf = sourceTable(data.sources)

const STANDARD_ATMOSPHERE: Source = {
  id: 'us-standard-atmosphere-1976',
  title: 'US Standard Atmosphere 1976 (ISO 2533:1975), equation 33a',
  mark: 'computed',
}

/** How far weather moves a barometer from the standard atmosphere. */
const WEATHER = quantity(
  'pressureDifference',
  data.weather.plusMinus.value,
  data.weather.plusMinus.unit,
)
const WEATHER_SAID = say(WEATHER)
const WEATHER_SOURCE = sourceOf(data.weather.source as 'weather')
/** Outside these no one works: the standard atmosphere of 11 000 m, and more than any weather at the lowest shore. */
const LOWEST_PA = 22_600
const HIGHEST_PA = 115_000

/**
 * The barometric pressure at a place, with its uncertainty.
 *
 * The barometer overrides the altitude; an altitude means the standard atmosphere give or take the
 * weather; with neither, sea level is assumed and listed. A barometer that contradicts the altitude
 * by more than the weather gives a warning, since it may have been reduced to sea level.
 *
 * @throws {CalcError} `out-of-range` for a barometer outside 22.6 to 115 kPa or an altitude above 11 000 m.
 */
export function resolvePlace({ altitude, barometer }: PlaceGiven): Place {
  if (barometer) return byBarometer(barometer, altitude)
  if (!altitude) return SEA_LEVEL
  const standard = propagate([altitude], (metres) => standardAt(altitude, metres))
  return placeOf(standard.si, Math.hypot(widthOf(standard), WEATHER.si), {
    assumptions: [
      {
        field: 'barometer',
        taken: `the standard atmosphere at this altitude, ±${WEATHER_SAID} for the weather`,
        because: 'no barometer was given',
      },
    ],
    sources: [STANDARD_ATMOSPHERE, WEATHER_SOURCE],
  })
}

function byBarometer(
  barometer: Quantity<'barometricPressure'>,
  altitude: Quantity<'altitude'> | undefined,
): Place {
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
  const { reading, assumption, source } = withInstrument(barometer, 'barometer', 'barometer')
  return placeOf(reading.si, widthOf(reading), {
    assumptions: assumption ? [assumption] : [],
    warnings: altitude ? contradiction(barometer.si, standardAt(altitude)) : [],
    sources: [...(source ? [source] : []), ...(altitude ? [STANDARD_ATMOSPHERE] : [])],
  })
}

function placeOf(
  barometerPa: number,
  plusMinusPa: number,
  told: Pick<Place, 'assumptions' | 'sources'> & Partial<Pick<Place, 'warnings'>>,
): Place {
  return {
    barometerPa,
    plusMinusPa,
    barometer: { name: 'barometer', si: barometerPa, plusMinus: plusMinusPa },
    air: barometricPressure(barometerPa, plusMinusPa),
    absolute(reading) {
      const found = toAbsolute(reading, barometerPa)
      return reading.kind === 'absolutePressure'
        ? found
        : absolutePressure(found.si, Math.hypot(widthOf(reading), plusMinusPa))
    },
    gauge: (pressurePa, plusMinus = 0) =>
      toGauge(pressurePa, barometerPa, Math.hypot(plusMinus, plusMinusPa)),
    warnings: [],
    ...told,
  }
}

const SEA_LEVEL = placeOf(SEA_LEVEL_PA, WEATHER.si, {
  assumptions: [
    {
      field: 'altitude',
      taken: `sea level, 29.92 inHg (101.325 kPa), ±${WEATHER_SAID} for the weather`,
      because: 'neither altitude nor barometer was given',
      short: 'sea level',
    },
  ],
  sources: [STANDARD_ATMOSPHERE, WEATHER_SOURCE],
})

function standardAt(altitude: Quantity<'altitude'>, metres = altitude.si): number {
  try {
    return standardAtmosphere(metres)
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
  if (Math.abs(barometerPa - standardPa) <= WEATHER.si) return []
  return [
    {
      code: 'barometer-contradicts-altitude',
      message: `The barometer of ${kPa(barometerPa)} is ${kPa(Math.abs(barometerPa - standardPa))} away from the ${kPa(standardPa)} of the standard atmosphere at this altitude, more than weather explains. The barometer was used; check that it is the station pressure and not reduced to sea level, as weather reports give it.`,
    },
  ]
}

const kPa = (pressurePa: number) => `${(pressurePa / 1000).toFixed(1)} kPa`
