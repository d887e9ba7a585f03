import { WATER_TRIPLE_K } from '../../physics/water.ts'
import { micron } from './micron.ts'
import {
  ABOVE_VAPOUR,
  type Judged,
  LONGEST_WATCH_S,
  NEAR_VAPOUR,
  type RiseReading,
  type RiseView,
  spanOf,
  steadyOf,
} from './rise-view.ts'

const frozen = ({ temperatureK }: RiseReading) => temperatureK < WATER_TRIPLE_K

/** No rise of consequence: what the level itself says. */
export function level(view: RiseView): Judged {
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
      because: `It stands at ${micron(levelPa)}, near water's vapour pressure of ${micron(vapourPa)}: ${frozen(reading) ? 'ice is in it, and leaves very slowly' : 'water is boiling in it'}.`,
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

/** The whole rise levels off below what water can reach. */
export function levelsOff(view: RiseView): Judged {
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
        ? `It levels off at ${micron(plateau.pa)}, near water's vapour pressure of ${micron(vapourPa)}: ${frozen(reading) ? 'ice' : 'liquid water'}.`
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
export function longer(view: RiseView, why: string, watchS = LONGEST_WATCH_S): Judged {
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
