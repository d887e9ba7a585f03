import { waterVapourPressure } from '../../physics/water.ts'
import { fitRise, LEVELLED } from './rise-fit.ts'
import { level, levelsOff, longer } from './rise-plateau.ts'
import { checkTimes, choked, padded, scatterOf } from './rise-readings.ts'
import { pastVapour, steadyPart } from './rise-steady.ts'
import {
  ABOVE_VAPOUR,
  type Judged,
  LONGEST_WATCH_S,
  type RiseJudgement,
  type RiseReading,
  type RiseView,
  STRONG,
  spanOf,
  steadyOf,
} from './rise-view.ts'

const FEWEST_POINTS = 5
/** Judgement, no source: a wet system levels off with a time constant no longer than this. */
const SLOWEST_DRYING_S = 3600

/**
 * Reads a standing vacuum: leaking (rises on), wet (levels off near water's vapour pressure), tight and
 * dry, or not to be told from these readings.
 *
 * @throws {CalcError} `bad-input` for fewer than two readings or times that do not rise.
 */
export function judgeRise(reading: RiseReading): RiseJudgement {
  checkTimes(reading.points)
  const vapourPa = waterVapourPressure(reading.temperatureK)
  const hottest = waterVapourPressure(reading.temperatureK + reading.temperaturePlusMinusK)
  const coldest = waterVapourPressure(reading.temperatureK - reading.temperaturePlusMinusK)
  const highestPlateauPa = hottest * ABOVE_VAPOUR + reading.levelPlusMinusPa
  const used = choked(reading)
  const fits = fitRise(padded(used), scatterOf(used, reading), {
    highestPlateauPa,
    slowestS: Math.max(SLOWEST_DRYING_S, spanOf(used) / 2),
  })
  const view: RiseView = { reading, used, fits, vapourPa, coldest, hottest, highestPlateauPa }
  const judged = decide(view)
  return { ...judged, fits, vapourPa, usedPoints: used.length }
}

function decide(view: RiseView): Judged {
  const { reading, used, fits, highestPlateauPa } = view
  const lastPa = reading.points.at(-1)?.pressurePa ?? 0
  const rises = fits.flat.bic - Math.min(fits.steady.bic, fits.levelling.bic, fits.both.bic)
  if (rises > STRONG && fits.steady.slope > 0 && lastPa > highestPlateauPa) return pastVapour(view)
  if (used.length < FEWEST_POINTS) {
    return {
      ...steadyOf(fits.steady),
      verdict: 'too-short-to-tell',
      because: `${used.length} readings do not show a shape: at least ${FEWEST_POINTS} are needed.`,
    }
  }
  const steady = steadyOf(fits.steady)
  if (falls(view)) {
    return {
      ...steady,
      verdict: 'cannot-tell',
      because:
        'The pressure falls: the pump was not shut off, or the system cooled. That shows neither leak nor water. Close the valve, let it settle and read again.',
    }
  }
  if (steady.slope + steady.slopePlusMinus < reading.negligibleSlope) return level(view)
  // no rise shown, but none excluded either
  if (rises <= STRONG)
    return longer(view, 'The readings scatter more than a leak of consequence would show.')
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
  const past = (view.highestPlateauPa - fits.steady.startPa) / Math.max(fits.steady.slope, 1e-12)
  return longer(
    view,
    'It rises, but whether on and on (a leak) or toward a level (water) does not show yet.',
    Math.min(past, LONGEST_WATCH_S),
  )
}
