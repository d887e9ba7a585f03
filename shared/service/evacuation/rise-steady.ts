import { micron } from './micron.ts'
import { level, longer } from './rise-plateau.ts'
import { type Judged, NEAR_VAPOUR, type RiseView, STRONG, spanOf, steadyOf } from './rise-view.ts'

/** The pressure has passed what water can do: air comes in. */
export function pastVapour(view: RiseView): Judged {
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

/** A steady rise is in the data. */
export function steadyPart(view: RiseView): Judged {
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
