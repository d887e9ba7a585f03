import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import type { Conditions } from '../../../cycle/index.ts'
import type { TestSizes } from '../../../diagnosis/latent.ts'
import { OF_THE_TEST, SPREAD, type TestNuisance } from '../../../diagnosis/nuisance.ts'
import type { Place } from '../../../instrument/index.ts'
import { humidityAt } from '../../../physics/moist-air.ts'
import type { Quantity } from '../../../quantity/index.ts'
import type { RunningInput } from './fields.ts'

/** Conditions of a test, and how well each is known, 1 σ. */
export interface Weather {
  /** Undefined: not read; the model's own are assumed then. */
  readonly known: Partial<Pick<Conditions, 'ambientK' | 'returnAirK' | 'returnHumidity' | 'speed'>>
  readonly barometerPa: number
  readonly sizes: TestSizes
}

type Temperature = Quantity<'temperature'> | undefined

/**
 * @param air - Ambient and return air as taken, with their ±.
 */
export function weatherOf(
  input: RunningInput,
  air: {
    readonly ambient: Temperature
    readonly returnAir: Temperature
    readonly wetBulb: Temperature
  },
  place: Place,
): Weather {
  const { ambient, returnAir, wetBulb } = air
  const humidity =
    input.relativeHumidity?.si ??
    (wetBulb && returnAir ? humidityAt(returnAir.si, wetBulb.si, place.barometerPa) : undefined)
  const { unread } = figures
  const temperature = (read: Temperature, least: number, not: number) =>
    read ? Math.hypot(least, (read.plusMinus ?? 0) / 2) : not
  return {
    known: {
      ...(ambient && { ambientK: ambient.si }),
      ...(returnAir && { returnAirK: returnAir.si }),
      ...(humidity !== undefined && { returnHumidity: humidity }),
      ...(input.compressorRpm !== undefined && { speed: input.compressorRpm / 60 }),
    },
    barometerPa: place.barometerPa,
    sizes: {
      ambientK: temperature(ambient, SPREAD.ambientK, unread.ambientK),
      returnAirK: temperature(returnAir, SPREAD.returnAirK, unread.returnAirK),
      returnHumidity: humidity === undefined ? unread.returnHumidity : SPREAD.returnHumidity,
      speed: input.compressorRpm === undefined ? unread.speed : unread.speedRead,
    },
  }
}

/** The conditions of a test that were read. */
export const conditionsRead = ({ known }: Weather): readonly TestNuisance[] =>
  OF_THE_TEST.filter((name) => known[name] !== undefined)

/** The conditions that a model machine is asked in. */
export const conditionsIn = (nominal: Conditions, { known, barometerPa }: Weather): Conditions => ({
  ...nominal,
  ...known,
  barometerPa,
})

/** Air in which a test says something of an air conditioner, K. Common practice, no source. */
const TEST_AIR = {
  ambientK: [288.15, 326.15],
  returnAirK: [289.15, 323.15],
} as const

/** Whether the air is such that a machine works as one that is judged. */
export const isTestWeather = ({ known }: Weather): boolean =>
  (['ambientK', 'returnAirK'] as const).every((name) => {
    const value = known[name]
    const [low, high] = TEST_AIR[name]
    return value === undefined || (value >= low && value <= high)
  })
