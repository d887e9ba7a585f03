import type { Conditions } from '../../cycle/index.ts'
import { CalcError, under } from '../../errors.ts'
import { ZERO_CELSIUS_K } from '../../gas-constants.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import { humidityAt, moistAir } from '../../physics/moist-air.ts'
import { fraction, type Quantity, say, temperature } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { SimulateInput } from './fields.ts'
import { TEXTS, withoutBand } from './texts.ts'

/** Weather and settings that the model takes, SI; outside them it was never looked at. */
const LIMITS = {
  ambient: [ZERO_CELSIUS_K, 333.15],
  returnAir: [ZERO_CELSIUS_K, 328.15],
  condenserFan: [0.2, 1.5],
  blower: [0.2, 1.5],
} as const

type Weather = Pick<
  SimulateInput,
  | 'ambient'
  | 'returnAir'
  | 'relativeHumidity'
  | 'returnWetBulb'
  | 'compressorRpm'
  | 'condenserFan'
  | 'blower'
>

/**
 * The weather around a machine and how it is run; what was not given is that of its nominal figures.
 *
 * @throws {CalcError} `out-of-range` for air that no machine meets, `bad-input` for two humidities.
 */
export function weatherFor(
  input: Weather,
  nominal: Conditions,
  place: Place,
  notes: Notes,
): Conditions {
  const assumed = (field: string, taken: string) =>
    notes.assumptions.push({
      field,
      taken,
      because: TEXTS.nominal,
      short: TEXTS.nominalShort,
    })
  const given = (field: keyof typeof LIMITS, usual: Quantity): number => {
    const found = input[field]
    if (found === undefined) {
      assumed(field, say(usual))
      return usual.si
    }
    const [least, most] = LIMITS[field]
    return plausible(withoutBand(found, field), least, most, 'A setting', [field]).si
  }
  const ambientK = given('ambient', temperature(nominal.ambientK))
  const returnAirK = given('returnAir', temperature(nominal.returnAirK))
  if (input.compressorRpm === undefined) {
    assumed('compressorRpm', `${Math.round(nominal.speed * SECONDS)} rpm`)
  }
  return {
    ambientK,
    returnAirK,
    returnHumidity: humidity(input, returnAirK, place.barometerPa, () => {
      assumed('relativeHumidity', say(fraction(nominal.returnHumidity)))
      return nominal.returnHumidity
    }),
    barometerPa: place.barometerPa,
    speed: input.compressorRpm === undefined ? nominal.speed : input.compressorRpm / SECONDS,
    condenserFan: given('condenserFan', fraction(nominal.condenserFan)),
    blower: given('blower', fraction(nominal.blower)),
  }
}

const SECONDS = 60

/** Relative humidity of the return air, 0.01 to 1. */
function humidity(
  { relativeHumidity, returnWetBulb }: Weather,
  dryBulbK: number,
  barometerPa: number,
  usual: () => number,
): number {
  if (relativeHumidity && returnWetBulb) {
    throw new CalcError('bad-input', 'Relative humidity and wet bulb say the same thing twice.', {
      path: ['returnWetBulb'],
      hint: 'Give one of them.',
    })
  }
  if (returnWetBulb) {
    return under('returnWetBulb', () =>
      humidityAt(dryBulbK, withoutBand(returnWetBulb, 'returnWetBulb').si, barometerPa),
    )
  }
  const found = relativeHumidity ? withoutBand(relativeHumidity, 'relativeHumidity').si : usual()
  under('relativeHumidity', () => moistAir(dryBulbK, found, barometerPa))
  return found
}
