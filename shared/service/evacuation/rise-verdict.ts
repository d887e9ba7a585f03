import { CalcError } from '../../errors.ts'
import { waterVapourPressure } from '../water.ts'
import {
  fitRise,
  type GaugeScatter,
  LEVELLED,
  type RiseFit,
  type RiseFits,
  type RisePoint,
} from './rise-fit.ts'

export const RISE_VERDICTS = [
  'leaking',
  'wet',
  'wet-and-leaking',
  'tight-and-dry',
  'too-short-to-tell',
  'cannot-tell',
] as const
export type RiseVerdict = (typeof RISE_VERDICTS)[number]

export interface RiseReading {
  readonly points: readonly RisePoint[]
  /** Temperature of the coldest part, K, and its expanded uncertainty. */
  readonly temperatureK: number
  readonly temperaturePlusMinusK: number
  readonly barometerPa: number
  /** Expanded uncertainty of the level of a reading (not of its change), Pa. */
  readonly levelPlusMinusPa: number
  /** Scatter of the gauge from one reading to the next, Pa, where it is known. */
  readonly scatterPa?: number | undefined
  /** Electronic gauges scatter in proportion to the reading, dial gauges by the same everywhere. */
  readonly proportional: boolean
  /** A steady rise below this is of no consequence here, Pa/s. */
  readonly negligibleSlope: number
  /** A rise that levels off below this does not count as wet, Pa. */
  readonly dryBelowPa: number
}

export interface RiseJudgement {
  readonly verdict: RiseVerdict
  readonly because: string
  /** Steady rise, Pa/s, with its expanded uncertainty, where the verdict rests on one. */
  readonly slope: number
  readonly slopePlusMinus: number
  /** Where the rise levels off, Pa, and the range that the readings leave open. */
  readonly plateau?: { readonly pa: number; readonly fromPa: number; readonly toPa: number }
  readonly moisture?: 'liquid-water' | 'dissolved'
  /** How much longer to watch, s from the first reading, where that would settle it. */
  readonly watchForS?: number
  readonly fits: RiseFits
  readonly vapourPa: number
  readonly usedPoints: number
}

/** BIC difference that counts as strong evidence (Kass & Raftery, J. Am. Stat. Assoc. 90, 773, 1995: 6 to 10). */
const STRONG = 6
const FEWEST_POINTS = 5
/** Judgement, no source: a wet system levels off with a time constant no longer than this. */
export const SLOWEST_DRYING_S = 3600
/** Above the vapour pressure by more than this, the rest must be air. */
const ABOVE_VAPOUR = 1.1
/** A plateau or a level from this share of the vapour pressure on is liquid water; below, water in oil. */
const NEAR_VAPOUR = 0.5
/** Inflow from the air stays constant while the pressure inside is below about half of outside. */
const CHOKED = 0.5
const LONGEST_WATCH_S = 7200
/** Expected scatter as a share of the reading, before the readings say what it is (judgement). */
const SHARE = 0.003

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
  const view: View = { reading, used, fits, vapourPa, coldest, hottest, highestPlateauPa }
  const judged = decide(view)
  return { ...judged, fits, vapourPa, usedPoints: used.length }
}

interface View {
  readonly reading: RiseReading
  readonly used: readonly RisePoint[]
  readonly fits: RiseFits
  readonly vapourPa: number
  readonly coldest: number
  readonly hottest: number
  readonly highestPlateauPa: number
}

type Judged = Omit<RiseJudgement, 'fits' | 'vapourPa' | 'usedPoints'>

function decide(view: View): Judged {
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
  if (steady.slope + steady.slopePlusMinus < reading.negligibleSlope) return level(view)
  // no rise shown, but none excluded either
  if (rises <= STRONG)
    return longer(view, 'The readings scatter more than a leak of consequence would show.')
  return rising(view)
}

/** The pressure has passed what water can do: air comes in. */
function pastVapour(view: View): Judged {
  const { fits, vapourPa, coldest } = view
  const plateauPa = fits.both.startPa + fits.both.stepPa
  const wetToo =
    fits.steady.bic - fits.both.bic > STRONG &&
    plateauPa > NEAR_VAPOUR * coldest &&
    fits.both.stepPa > NEAR_VAPOUR * coldest &&
    fits.both.slope > 0
  const rate = steadyOf(wetToo ? fits.both : fits.steady)
  return wetToo
    ? {
        ...rate,
        verdict: 'wet-and-leaking',
        because: `It rose fast to about water's vapour pressure (${micron(vapourPa)}) and then past it: water and a leak.`,
        moisture: 'liquid-water',
      }
    : {
        ...rate,
        verdict: 'leaking',
        because: `It rose past ${micron(vapourPa)}, the vapour pressure of water at this temperature: only air coming in does that.`,
      }
}

/** No rise of consequence: what the level itself says. */
function level(view: View): Judged {
  const { reading, used, fits, vapourPa, coldest, hottest } = view
  const levelPa = Math.max(...used.slice(-3).map(({ pressurePa }) => pressurePa))
  const rate = steadyOf(fits.steady)
  const [from, to] = [levelPa - reading.levelPlusMinusPa, levelPa + reading.levelPlusMinusPa]
  if (to < NEAR_VAPOUR * coldest) {
    return {
      ...rate,
      verdict: 'tight-and-dry',
      because: `It stays at ${micron(levelPa)}, well below the ${micron(vapourPa)} that liquid water would push it to.`,
    }
  }
  if (from >= NEAR_VAPOUR * coldest && to <= ABOVE_VAPOUR * hottest) {
    return {
      ...rate,
      verdict: 'wet',
      moisture: 'liquid-water',
      because: `It stands at ${micron(levelPa)}, near water's vapour pressure of ${micron(vapourPa)}: water is boiling in it.`,
    }
  }
  return {
    ...rate,
    verdict: 'cannot-tell',
    because:
      from > ABOVE_VAPOUR * hottest
        ? `It holds, but at ${micron(levelPa)}, above the ${micron(vapourPa)} at which water boils: that cannot show whether it is dry. Pull deeper.`
        : `It holds at ${micron(levelPa)} ± ${micron(reading.levelPlusMinusPa)}, too near water's vapour pressure of ${micron(vapourPa)} for this gauge. An electronic gauge that reads in micron would settle it.`,
  }
}

function rising(view: View): Judged {
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

/** A steady rise is in the data. */
function steadyPart(view: View): Judged {
  const { reading, used, fits, coldest } = view
  const mixed = fits.steady.bic - fits.both.bic > STRONG
  const chosen = mixed ? fits.both : fits.steady
  const rate = steadyOf(chosen)
  const span = spanOf(used)
  const share = chosen.stepPa / Math.max(chosen.stepPa + chosen.slope * span, 1e-12)
  const plateauPa = chosen.startPa + chosen.stepPa
  if (mixed && share > 0.5 && plateauPa > reading.dryBelowPa) {
    return {
      ...rate,
      verdict: 'wet',
      plateau: { pa: plateauPa, fromPa: plateauPa, toPa: plateauPa },
      moisture: plateauPa > NEAR_VAPOUR * coldest ? 'liquid-water' : 'dissolved',
      because: `Most of the rise levels off, at about ${micron(plateauPa)}; what still creeps up may be slow drying or a leak beneath it. Dry it first, then test again.`,
    }
  }
  if (mixed && share > 0.25 && plateauPa > reading.dryBelowPa) {
    return longer(view, 'Part of the rise levels off and part goes on.')
  }
  if (rate.slope - rate.slopePlusMinus > reading.negligibleSlope) {
    return {
      ...rate,
      verdict: 'leaking',
      because: `It rises on by ${micron(rate.slope * 60)} a minute and does not level off: air comes in.`,
    }
  }
  if (rate.slope + rate.slopePlusMinus < reading.negligibleSlope) return level(view)
  return {
    ...rate,
    verdict: 'cannot-tell',
    because: `It rises on by ${micron(rate.slope * 60)} ± ${micron(rate.slopePlusMinus * 60)} a minute, which reaches over the ${micron(reading.negligibleSlope * 60)} a minute that is of no consequence. A longer watch or a finer gauge settles it.`,
  }
}

/** The whole rise levels off below what water can reach. */
function levelsOff(view: View): Judged {
  const { reading, fits, coldest, vapourPa } = view
  const ends = fits.possibleLevellings.map(({ startPa, stepPa }) => startPa + stepPa)
  const plateau = {
    pa: fits.levelling.startPa + fits.levelling.stepPa,
    fromPa: Math.min(...ends) - reading.levelPlusMinusPa,
    toPa: Math.max(...ends) + reading.levelPlusMinusPa,
  }
  const rate = { slope: 0, slopePlusMinus: 0 }
  if (plateau.toPa <= reading.dryBelowPa) {
    return {
      ...rate,
      plateau,
      verdict: 'tight-and-dry',
      because: `It levels off at ${micron(plateau.pa)}: gas leaving the oil, no water and no leak of consequence.`,
    }
  }
  if (plateau.fromPa > reading.dryBelowPa) {
    const liquid = plateau.pa > NEAR_VAPOUR * coldest
    return {
      ...rate,
      plateau,
      verdict: 'wet',
      moisture: liquid ? 'liquid-water' : 'dissolved',
      because: liquid
        ? `It levels off at ${micron(plateau.pa)}, near water's vapour pressure of ${micron(vapourPa)}: liquid water.`
        : `It levels off at ${micron(plateau.pa)}, below water's vapour pressure of ${micron(vapourPa)}: moisture or refrigerant in the oil.`,
    }
  }
  return {
    ...rate,
    plateau,
    verdict: 'cannot-tell',
    because: `It levels off between ${micron(plateau.fromPa)} and ${micron(plateau.toPa)}, around the ${micron(reading.dryBelowPa)} that divides dry from damp. A finer gauge settles it; so does another evacuation.`,
  }
}

/** More time would settle it, or no reasonable time would. */
function longer(view: View, why: string, watchS = LONGEST_WATCH_S): Judged {
  const { reading, used, fits } = view
  const rate = steadyOf(fits.steady)
  const span = spanOf(used)
  // the uncertainty of a slope falls with the 3/2 power of the time at one rate of reading
  const excess = rate.slopePlusMinus / Math.max(reading.negligibleSlope, 1e-12)
  const bySlope = span * Math.max(excess, 1) ** (2 / 3) * 1.5
  const watchForS = Math.max(Math.min(bySlope, Math.max(watchS, span * 1.5)), span * 1.25)
  if (bySlope > LONGEST_WATCH_S && excess > 1) {
    return {
      ...rate,
      verdict: 'cannot-tell',
      because: `${why} With this gauge no reasonable time would do: an electronic gauge that reads in micron would.`,
    }
  }
  return {
    ...rate,
    verdict: 'too-short-to-tell',
    because: `${why} Watch on to about ${Math.ceil(watchForS / 60)} min from the first reading.`,
    watchForS,
  }
}

const steadyOf = ({ slope, slopeUncertainty }: RiseFit) => ({
  slope,
  slopePlusMinus: 2 * slopeUncertainty,
})

const spanOf = (points: readonly RisePoint[]) =>
  (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)

/** Readings below half of the barometer, where the inflow is constant; all of them when too few are. */
function choked({ points, barometerPa }: RiseReading): readonly RisePoint[] {
  const index = points.findIndex(({ pressurePa }) => pressurePa > CHOKED * barometerPa)
  const below = index < 0 ? points : points.slice(0, index)
  return below.length >= 2 ? below : points.slice(0, 2)
}

/** The fits want four points; fewer are repeated, and the verdict then never rests on a shape. */
function padded(points: readonly RisePoint[]): readonly RisePoint[] {
  const last = points.at(-1)
  if (points.length >= 4 || !last) return points
  const extra = Array.from({ length: 4 - points.length }, () => last)
  return [...points, ...extra]
}

/** Known scatter counts as twenty readings; otherwise a weak expectation from the steps of the readings. */
function scatterOf(
  points: readonly RisePoint[],
  { scatterPa, proportional }: RiseReading,
): GaugeScatter {
  if (scatterPa !== undefined && scatterPa > 0) return { sigmaOf: () => scatterPa, weight: 20 }
  const pressures = points.map(({ pressurePa }) => pressurePa)
  const steps = pressures
    .slice(1)
    .map((value, index) => Math.abs(value - (pressures[index] ?? value)))
    .filter((step) => step > 1e-9)
  const finest = Math.max(steps.length === 0 ? 0 : Math.min(...steps) / Math.sqrt(12), 0.05)
  const mean = pressures.reduce((sum, value) => sum + value, 0) / Math.max(pressures.length, 1)
  return {
    sigmaOf: (pressurePa) => Math.hypot(finest, SHARE * (proportional ? pressurePa : mean)),
    weight: 2,
  }
}

function checkTimes(points: readonly RisePoint[]): void {
  if (points.length < 2) {
    throw new CalcError('bad-input', 'A rise test needs at least two readings.', {
      path: ['rise'],
      hint: 'Give time and pressure of each reading; five or more show a shape.',
    })
  }
  points.forEach(({ timeS }, index) => {
    const before = points[index - 1]
    if (before && !(timeS > before.timeS)) {
      throw new CalcError('bad-input', `Reading ${index + 1} is not later than the one before.`, {
        path: ['rise', index, 'time'],
        hint: 'Give the readings in order, each with the time since the valve was closed.',
      })
    }
  })
}

const MICRON_PA = 0.133322387415
const micron = (pa: number) => {
  const value = pa / MICRON_PA
  if (Math.abs(value) < 10) return `${Number(value.toFixed(1))} micron`
  return `${String(Math.round(value)).replace(/\B(?=(?:\d{3})+$)/gu, ',')} micron`
}
