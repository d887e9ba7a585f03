import { WATER_TRIPLE_K } from '../../physics/water.ts'
import { compareWithBand, duration, say } from '../../quantity/index.ts'
import { plateauOf, type RiseFit } from './rise-shape.ts'
import {
  ABOVE_VAPOUR,
  type Judged,
  LONGEST_WATCH_S,
  NEAR_VAPOUR,
  type RiseReading,
  type RiseView,
  shareOfVapour,
  spanOf,
  steadyOf,
} from './rise-view.ts'
import { because } from './sentences.ts'
import { vacuumText } from './vacuum-text.ts'

const frozen = ({ temperature }: RiseReading) => temperature.si < WATER_TRIPLE_K

/** No rise of consequence: what the level itself says. */
export function level(view: RiseView): Judged {
  const { reading, used, fits, vapourPa } = view
  const levelPa = Math.max(...used.slice(-3).map(({ pressurePa }) => pressurePa))
  const rate = steadyOf(fits.steady)
  const said = { level: vacuumText(levelPa), vapour: vacuumText(vapourPa) }
  switch (compareWithBand(shareOfVapour(levelPa, view), NEAR_VAPOUR, ABOVE_VAPOUR)) {
    case 'below':
      return { ...rate, verdict: 'tight-and-dry', because: because('stays-below-water', said) }
    case 'inside':
      return {
        ...rate,
        verdict: 'wet',
        moisture: 'liquid-water',
        because: because(frozen(reading) ? 'stands-at-ice' : 'stands-at-water', said),
      }
    case 'above':
      return { ...rate, verdict: 'cannot-tell', because: because('holds-above-water', said) }
    case 'cannot-tell':
      return {
        ...rate,
        verdict: 'cannot-tell',
        because: because('holds-near-water', {
          ...said,
          level: vacuumText(levelPa, reading.levelPlusMinusPa),
        }),
      }
  }
}

/** Where a rise levels off, with what the readings and the gauge leave open. */
export function plateauRange(
  found: RiseFit,
  possible: readonly RiseFit[],
  { levelPlusMinusPa }: RiseReading,
) {
  const ends = possible.map(plateauOf)
  return {
    pa: plateauOf(found),
    fromPa: Math.min(...ends) - levelPlusMinusPa,
    toPa: Math.max(...ends) + levelPlusMinusPa,
  }
}

/** The whole rise levels off below what water can reach. */
export function levelsOff({ reading, fits, vapourPa }: RiseView): Judged {
  const plateau = plateauRange(fits.levelling, fits.possibleLevellings, reading)
  const rate = { slope: 0, slopePlusMinus: 0 }
  const said = { level: vacuumText(plateau.pa), vapour: vacuumText(vapourPa) }
  if (plateau.toPa <= reading.dryBelowPa) {
    return { ...rate, plateau, verdict: 'tight-and-dry', because: because('levels-off-dry', said) }
  }
  if (plateau.fromPa > reading.dryBelowPa) {
    const liquid = plateau.pa > NEAR_VAPOUR * vapourPa
    const why = liquid
      ? frozen(reading)
        ? 'levels-off-at-ice'
        : 'levels-off-at-water'
      : 'levels-off-dissolved'
    return {
      ...rate,
      plateau,
      verdict: 'wet',
      moisture: liquid ? 'liquid-water' : 'dissolved',
      because: because(why, said),
    }
  }
  return {
    ...rate,
    plateau,
    verdict: 'cannot-tell',
    because: because('levels-off-around', {
      from: vacuumText(plateau.fromPa),
      to: vacuumText(plateau.toPa),
      dry: vacuumText(reading.dryBelowPa),
    }),
  }
}

type Why = 'scatters' | 'part-levels-off' | 'on-or-off' | 'above-or-on'

/** More time would settle it, or no reasonable time would. */
export function longer(view: RiseView, why: Why, watchS = LONGEST_WATCH_S): Judged {
  const { reading, used, fits, vapourPa } = view
  const rate = steadyOf(fits.steady)
  const span = spanOf(used)
  // the uncertainty of a slope falls with the 3/2 power of the time at one rate of reading
  const excess = rate.slopePlusMinus / Math.max(reading.negligibleSlope, 1e-12)
  const bySlope = span * Math.max(excess, 1) ** (2 / 3) * 1.5
  const watchForS = Math.max(Math.min(bySlope, Math.max(watchS, span * 1.5)), span * 1.25)
  const said = because(why, { vapour: vacuumText(vapourPa) })
  if (bySlope > LONGEST_WATCH_S && excess > 1) {
    return { ...rate, verdict: 'cannot-tell', because: `${said} ${because('no-time-would-do')}` }
  }
  const until = say(duration(Math.ceil(watchForS / 60) * 60))
  return {
    ...rate,
    verdict: 'too-short-to-tell',
    because: `${said} ${because('watch-on', { until })}`,
    watchForS,
  }
}
