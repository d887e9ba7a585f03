import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { PressureReading, Quantity } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { measured } from './pressure-part.ts'

export interface StandingInput {
  readonly startPressure?: PressureReading | undefined
  readonly endPressure?: PressureReading | undefined
  readonly startTemperature?: Quantity<'temperature'> | undefined
  readonly endTemperature?: Quantity<'temperature'> | undefined
  readonly elapsed?: Quantity<'duration'> | undefined
  readonly volume?: Quantity<'volume'> | undefined
  readonly vacuumLimit?: string | undefined
}

/** One small division of a service gauge, Pa, and of a thermometer, K. */
const SERVICE_GAUGE_PA = 7_000
const VACUUM_GAUGE_PA = 850
const THERMOMETER_K = 1
/** The usual error of an electronic vacuum gauge, of its reading. */
const ELECTRONIC_SHARE = 0.1

/** The four readings in SI, each with an uncertainty. */
export interface Standing {
  readonly start: Quantity<'absolutePressure'>
  readonly end: Quantity<'absolutePressure'>
  readonly fromK: Quantity<'temperature'>
  readonly toK: Quantity<'temperature'>
}

/** @throws {CalcError} `missing-input` where one of the four readings is missing. */
export function readingsOf(input: StandingInput, barometerPa: number, notes: Notes): Standing {
  const { startPressure, endPressure, startTemperature, endTemperature } = input
  if (!startPressure || !endPressure || !startTemperature || !endTemperature) {
    const missing = (
      ['startPressure', 'endPressure', 'startTemperature', 'endTemperature'] as const
    ).filter((name) => input[name] === undefined)
    throw new CalcError(
      'missing-input',
      'A standing test needs pressure and temperature at its start and at its end.',
      {
        path: missing.slice(0, 1),
        hint: `Give ${missing.join(', ')} as well: gas shrinks as it cools.`,
      },
    )
  }
  const deep = [startPressure, endPressure].every(({ kind, si }) =>
    kind === 'gaugePressure' ? si < 0 : si < 0.98 * barometerPa,
  )
  // Only an electronic gauge reads a vacuum as absolute pressure.
  const electronic =
    deep && startPressure.kind === 'absolutePressure' && endPressure.kind === 'absolutePressure'
  const widthPa = ({ si }: PressureReading) =>
    electronic ? ELECTRONIC_SHARE * si : deep ? VACUUM_GAUGE_PA : SERVICE_GAUGE_PA
  const gauge = electronic ? '±10 % (electronic)' : deep ? '±0.25 inHg' : '±1 psi (7 kPa)'
  const readings = [startPressure, endPressure, startTemperature, endTemperature]
  if (readings.some(({ plusMinus }) => plusMinus === undefined)) {
    notes.assumptions.push({
      field: 'startPressure',
      taken: `gauge ${gauge} and thermometer ±1.8 °F (1 K) where none was stated`,
      because: 'no uncertainty was given with the readings; write it as "150 ±0.5 psig"',
    })
  }
  notes.assumptions.push({
    field: 'barometer',
    taken: 'the same at both readings',
    because:
      'a gauge reads against the air; over days a change of weather adds up to about 0.4 psi',
  })
  return {
    start: measured(startPressure, barometerPa, 'startPressure', widthPa(startPressure)),
    end: measured(endPressure, barometerPa, 'endPressure', widthPa(endPressure)),
    fromK: settled(startTemperature, 'startTemperature'),
    toK: settled(endTemperature, 'endTemperature'),
  }
}

const settled = (given: Quantity<'temperature'>, path: string) =>
  plausible(given, 200, 420, 'A temperature', [path]).within(given.plusMinus ?? THERMOMETER_K)
