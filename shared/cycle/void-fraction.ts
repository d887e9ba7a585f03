/**
 * How much of a tube's space is vapour while refrigerant boils or condenses in it.
 *
 * Zivi 1964 (J. Heat Transfer 86, 247), from least entropy production: α = x/(x + B(1−x)),
 * B = (ρ_v/ρ_l)^(2/3). Check value of an independent public implementation (chemical engineering
 * library `fluids`): x 0.4, ρ_l 800, ρ_v 2.5 gives 0.9689339909056356. It is known to predict more vapour,
 * so less charge, than measurements show.
 */
export function voidFraction(
  quality: number,
  liquidDensity: number,
  vapourDensity: number,
): number {
  const slip = Math.cbrt(vapourDensity / liquidDensity) ** 2
  return quality / (quality + slip * (1 - quality))
}

/** Below this span of quality the mean is that of the middle: the closed form would lose its digits. */
const SPAN = 1e-4

/**
 * Mean void fraction of a tube along which the quality runs evenly from `from` to `to`, that is,
 * at an even heat flux: ∫α dx/Δx in closed form.
 */
export function meanVoidFraction(
  from: number,
  to: number,
  liquidDensity: number,
  vapourDensity: number,
): number {
  if (Math.abs(to - from) < SPAN) {
    return voidFraction((from + to) / 2, liquidDensity, vapourDensity)
  }
  const slip = Math.cbrt(vapourDensity / liquidDensity) ** 2
  const rest = 1 - slip
  const along = (x: number) => x / rest - (slip / (rest * rest)) * Math.log(slip + rest * x)
  return (along(to) - along(from)) / (to - from)
}

/** kg/m³ of a tube along which the quality runs from `from` to `to`. */
export function meanBoilingDensity(
  from: number,
  to: number,
  at: { readonly liquidDensity: number; readonly vapourDensity: number },
): number {
  const alpha = meanVoidFraction(from, to, at.liquidDensity, at.vapourDensity)
  return alpha * at.vapourDensity + (1 - alpha) * at.liquidDensity
}
