import { level, longer, plateauRange } from './rise-plateau.ts'
import { plateauOf, type RiseFit } from './rise-shape.ts'
import {
  FEWEST_POINTS,
  type Judged,
  NEAR_VAPOUR,
  type RiseView,
  STRONG,
  spanOf,
  steadyOf,
} from './rise-view.ts'
import { because } from './sentences.ts'
import { riseText, vacuumText } from './vacuum-text.ts'

/** A leak ends at the pressure of the air; what stops below this share of it is no leak (judgement). */
const NEAR_AIR = 0.8

/**
 * The pressure has passed what water can do. Air that comes in rises on; refrigerant that leaves the oil
 * or a trapped pocket levels off, far below the air.
 */
export function pastVapour(view: RiseView): Judged {
  const { fits, reading, used, vapourPa, highestWaterPa } = view
  const { free, freeAndSteady, steady, both, slowing } = fits
  const _said = { vapour: vacuumText(vapourPa) }
  if (used.length < reading.points.length) return pastHalf(view)
  if (used.length < FEWEST_POINTS) return tooFew(view)
  const goesOn = Math.min(steady.bic, slowing.bic, both.bic)
  if (goesOn - free.bic > STRONG && plateauOf(free) > highestWaterPa) return levelsAbove(view)
  if (goesOn - freeAndSteady.bic > STRONG && plateauOf(freeAndSteady) > highestWaterPa) {
    return levelsAbove(view)
  }
  if (free.bic - goesOn > STRONG) return leaking(view, 'past-water')
  return longer(view, 'above-or-on')
}

/** Past half of the air's pressure: air, unless it levels off well below the air. */
function pastHalf(view: RiseView): Judged {
  const { reading } = view
  const whole = view.whole()
  const levels =
    reading.points.length >= FEWEST_POINTS &&
    Math.min(whole.steady.bic, whole.slowing.bic) - whole.free.bic > STRONG &&
    plateauOf(whole.free) < NEAR_AIR * reading.barometerPa
  return levels ? levelsAbove({ ...view, fits: whole }) : leaking(view, 'toward-the-air')
}

/** Levels off above water: neither water nor air from outside stops there. */
function levelsAbove({ fits, reading, used, vapourPa }: RiseView): Judged {
  const { free, freeAndSteady } = fits
  const rate = steadyOf(freeAndSteady)
  const goesOn = free.bic - freeAndSteady.bic > STRONG && rate.slope > reading.negligibleSlope
  if (!goesOn) {
    const plateau = plateauRange(free, fits.possibleFree, reading)
    return {
      slope: 0,
      slopePlusMinus: rate.slopePlusMinus,
      plateau,
      verdict: 'levels-off-above-water',
      because: because('levels-off-above-water', {
        level: vacuumText(plateau.pa),
        vapour: vacuumText(vapourPa),
      }),
    }
  }
  const said = { rate: riseText(rate.slope * 60), vapour: vacuumText(vapourPa) }
  if (stepShare(freeAndSteady, spanOf(used)) <= 0.5) {
    return { ...rate, verdict: 'cannot-tell', because: because('above-water-and-on', said) }
  }
  return {
    ...rate,
    plateau: plateauRange(freeAndSteady, [freeAndSteady], reading),
    verdict: 'levels-off-above-water',
    because: because('levels-off-above-and-creeps', {
      ...said,
      level: vacuumText(plateauOf(freeAndSteady)),
    }),
  }
}

function leaking({ fits, vapourPa }: RiseView, why: 'past-water' | 'toward-the-air'): Judged {
  const plateauPa = plateauOf(fits.both)
  const wetToo =
    Math.min(fits.steady.bic, fits.slowing.bic) - fits.both.bic > STRONG &&
    plateauPa > NEAR_VAPOUR * vapourPa &&
    fits.both.stepPa > NEAR_VAPOUR * vapourPa &&
    fits.both.slope > 0
  const said = { vapour: vacuumText(vapourPa) }
  return wetToo
    ? {
        ...steadyOf(fits.both),
        verdict: 'wet-and-leaking',
        because: because('water-then-past-it', said),
        moisture: 'liquid-water',
      }
    : { ...steadyOf(fits.steady), verdict: 'leaking', because: because(why, said) }
}

/** How much of a rise is the part that levels off. */
const stepShare = ({ stepPa, slope }: RiseFit, spanS: number) =>
  stepPa / Math.max(stepPa + slope * spanS, 1e-12)

/** Too few readings to show a shape. */
export const tooFew = ({ used, fits }: RiseView): Judged => ({
  ...steadyOf(fits.steady),
  verdict: 'too-short-to-tell',
  because: because('too-few', { count: used.length, fewest: FEWEST_POINTS }),
})

/** A steady rise is in the data. */
export function steadyPart(view: RiseView): Judged {
  const { reading, used, fits, vapourPa } = view
  const mixed = fits.steady.bic - fits.both.bic > STRONG
  const chosen = mixed ? fits.both : fits.steady
  const rate = steadyOf(chosen)
  const share = stepShare(chosen, spanOf(used))
  const plateauPa = plateauOf(chosen)
  if (mixed && share > 0.5 && plateauPa > reading.dryBelowPa) {
    return {
      ...rate,
      verdict: 'wet',
      plateau: { pa: plateauPa, fromPa: plateauPa, toPa: plateauPa },
      moisture: plateauPa > NEAR_VAPOUR * vapourPa ? 'liquid-water' : 'dissolved',
      because: because('levels-off-and-creeps', { level: vacuumText(plateauPa) }),
    }
  }
  if (mixed && share > 0.25 && plateauPa > reading.dryBelowPa) {
    return longer(view, 'part-levels-off')
  }
  if (rate.slope - rate.slopePlusMinus > reading.negligibleSlope) {
    return {
      ...rate,
      verdict: 'leaking',
      because: because('rises-on', { rate: riseText(rate.slope * 60) }),
    }
  }
  if (rate.slope + rate.slopePlusMinus < reading.negligibleSlope) return level(view)
  return {
    ...rate,
    verdict: 'cannot-tell',
    because: because('rises-about-enough', {
      rate: riseText(rate.slope * 60, rate.slopePlusMinus * 60),
      least: riseText(reading.negligibleSlope * 60),
    }),
  }
}
