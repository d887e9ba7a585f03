import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { absolutePressure, quantity, say, toAbsolute } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import type { EvacuationInput } from './fields.ts'
import type { RisePoint } from './rise-shape.ts'
import { sentences } from './sentences.ts'

const TEN_MINUTES = quantity('duration', 10, 'min')
/** Judgement, no source: a fifth of the 500 micron in 10 min that common practice lets pass. */
const NEGLIGIBLE = quantity('pressureDifference', 100, 'micron')

/**
 * Readings in SI.
 *
 * @throws {CalcError} for times and pressures that no vacuum has.
 */
export const pointsOf = (
  rise: NonNullable<EvacuationInput['rise']>,
  barometerPa: number,
): readonly RisePoint[] =>
  rise.map(({ time, pressure }, index) => ({
    timeS: plausible(time, 0, 30 * 86_400, 'A time', ['rise', index, 'time']).si,
    pressurePa: belowAir(
      under(['rise', index, 'pressure'], () => toAbsolute(pressure, barometerPa)).si,
      barometerPa,
      index,
    ),
  }))

/** Steady rise that does not matter, Pa/s. */
export function negligibleSlope({ negligibleRise }: EvacuationInput, notes: Notes): number {
  const inTen = negligibleRise
    ? plausible(negligibleRise, 0.01, 1e5, 'A rise', ['negligibleRise'])
    : NEGLIGIBLE
  if (!negligibleRise) {
    notes.assumptions.push({
      field: 'negligibleRise',
      taken: `${say(NEGLIGIBLE)} in 10 min`,
      because: sentences.assumed['negligible-rise'],
    })
  }
  return inTen.si / TEN_MINUTES.si
}

/** Standard deviation of one reading, Pa, from the ± that was given (coverage factor 2). */
export const scatterGiven = ({ riseScatter }: EvacuationInput): number | undefined =>
  riseScatter && plausible(riseScatter, 1e-4, 1e4, 'A scatter', ['riseScatter']).si / 2

function belowAir(pressurePa: number, barometerPa: number, index: number): number {
  if (pressurePa <= barometerPa * 1.02) return pressurePa
  throw new CalcError(
    'out-of-range',
    `Reading ${index + 1} of the rise, ${say(absolutePressure(pressurePa))}, is above the barometer: that is no vacuum.`,
    {
      path: ['rise', index, 'pressure'],
      hint: 'Write vacuum gauge readings as inHg vac, electronic ones as micron.',
    },
  )
}
