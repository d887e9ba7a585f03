import { waterVapourPressure } from '../../physics/water.ts'
import { fitRise, LEVELLED } from './rise-fit.ts'
import { level, levelsOff, longer } from './rise-plateau.ts'
import { checkTimes, choked, padded, scatterOf } from './rise-readings.ts'
import { pastVapour, steadyPart, tooFew } from './rise-steady.ts'
import {
  ABOVE_VAPOUR,
  FEWEST_POINTS,
  type Judged,
  LONGEST_WATCH_S,
  type RiseJudgement,
  type RiseReading,
  type RiseView,
  STRONG,
  spanOf,
  steadyOf,
} from './rise-view.ts'
import { because } from './sentences.ts'

/** Judgement, no source: a wet system levels off with a time constant no longer than this. */
const SLOWEST_DRYING_S = 3600

/**
 * Reads a standing vacuum: leaking (rises on), wet (levels off near water's vapour pressure), levelling
 * off above it (refrigerant from the oil or a trapped pocket), tight and dry, or not to be told from
 * these readings.
 *
 * @throws {CalcError} `bad-input` for fewer than two readings or times that do not rise.
 */
export function judgeRise(reading: RiseReading): RiseJudgement {
  checkTimes(reading.points)
  const vapourPa = waterVapourPressure(reading.temperature.si)
  const highestWaterPa = ABOVE_VAPOUR * vapourPa
  const used = choked(reading)
  const fitsOf = (points: RiseReading['points']) =>
    fitRise(padded(points), scatterOf(points, reading), {
      highestWaterPa,
      airPa: reading.barometerPa,
      slowestS: Math.max(SLOWEST_DRYING_S, spanOf(points) / 2),
    })
  const fits = fitsOf(used)
  const whole = () => (used === reading.points ? fits : fitsOf(reading.points))
  const view: RiseView = { reading, used, fits, whole, vapourPa, highestWaterPa }
  return { ...decide(view), fits, vapourPa, usedPoints: used.length }
}

function decide(view: RiseView): Judged {
  const { reading, used, fits, highestWaterPa } = view
  const lastPa = reading.points.at(-1)?.pressurePa ?? 0
  const rises = fits.flat.bic - Math.min(fits.steady.bic, fits.levelling.bic, fits.both.bic)
  if (rises > STRONG && fits.steady.slope > 0 && lastPa > highestWaterPa) return pastVapour(view)
  if (used.length < FEWEST_POINTS) return tooFew(view)
  const steady = steadyOf(fits.steady)
  if (falls(view)) return { ...steady, verdict: 'cannot-tell', because: because('falls') }
  if (steady.slope + steady.slopePlusMinus < reading.negligibleSlope) return level(view)
  // no rise shown, but none excluded either
  if (rises <= STRONG) return longer(view, 'scatters')
  return rising(view)
}

/** A fall that would be of consequence if it were a rise, and is no scatter. */
function falls({ reading, fits }: RiseView): boolean {
  const { slope, slopePlusMinus } = steadyOf(fits.steady)
  return (
    fits.flat.bic - fits.steady.bic > STRONG &&
    slope + slopePlusMinus < -reading.negligibleSlope / 2
  )
}

function rising(view: RiseView): Judged {
  const { used, fits } = view
  const withLeak = Math.min(fits.steady.bic, fits.both.bic)
  const withLevelling = Math.min(fits.levelling.bic, fits.both.bic)
  if (fits.levelling.bic - withLeak > STRONG) return steadyPart(view)
  const slowest = Math.max(...fits.possibleLevellings.map(({ constantS }) => constantS), 0)
  const levelled = slowest > 0 && spanOf(used) > LEVELLED * slowest
  if (fits.steady.bic - withLevelling > STRONG && levelled) return levelsOff(view)
  const past = (view.highestWaterPa - fits.steady.startPa) / Math.max(fits.steady.slope, 1e-12)
  return longer(view, 'on-or-off', Math.min(past, LONGEST_WATCH_S))
}
