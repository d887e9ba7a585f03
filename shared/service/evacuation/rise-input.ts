import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import {
  absolutePressure,
  type PressureReading,
  type Quantity,
  say,
  toAbsolute,
} from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { MICRON_PA } from './micron.ts'
import type { RisePoint } from './rise-fit.ts'

export interface RiseInput {
  readonly temperature?: Quantity<'temperature'> | undefined
  readonly volume?: Quantity<'volume'> | undefined
  readonly rise?:
    | readonly { readonly time: Quantity<'duration'>; readonly pressure: PressureReading }[]
    | undefined
  readonly riseScatter?: Quantity<'pressureDifference'> | undefined
  readonly negligibleRise?: Quantity<'pressureDifference'> | undefined
  readonly dryBelow?: PressureReading | undefined
  readonly limit?: string | undefined
}

export const TEN_MINUTES_S = 600
/** Judgement, no source: a fifth of the 500 micron in 10 min that common practice lets pass. */
const NEGLIGIBLE_PA = 100 * MICRON_PA
/** Common practice: above this a standing vacuum is not called dry. */
const DRY_BELOW_PA = 1000 * MICRON_PA

/** Readings in SI. @throws {CalcError} for times and pressures that no vacuum has. */
export const pointsOf = (
  rise: NonNullable<RiseInput['rise']>,
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

/** Rise in ten minutes that is of no consequence, Pa. */
export function negligible({ negligibleRise }: RiseInput, notes: Notes): number {
  if (negligibleRise) return plausible(negligibleRise, 0.01, 1e5, 'A rise', ['negligibleRise']).si
  notes.assumptions.push({
    field: 'negligibleRise',
    taken: '100 micron in 10 min',
    because:
      'no rise of no consequence was given; a fifth of the 500 micron in 10 min of common practice (judgement)',
  })
  return NEGLIGIBLE_PA
}

/** A rise that levels off below this counts as dry, Pa. */
export function dryBelow(
  { dryBelow: given }: RiseInput,
  barometerPa: number,
  notes: Notes,
): number {
  if (given) return under('dryBelow', () => toAbsolute(given, barometerPa)).si
  notes.assumptions.push({
    field: 'dryBelow',
    taken: '1000 micron',
    because: 'no dividing line between dry and damp was given; common practice',
  })
  return DRY_BELOW_PA
}

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
