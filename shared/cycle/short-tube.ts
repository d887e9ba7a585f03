import type { Fluid, Saturation } from './fluid.ts'

/**
 * Flow through a short tube of fixed bore, near enough choked: W. V. Payne and D. L. O'Neal, A mass
 * flowrate correlation for refrigerants and refrigerant mixtures flowing through short tubes, HVAC&R
 * Research 10(1), 73 (2004). Coefficients read in two independent public heat-pump codes that agree
 * in every digit; the paper's own table was not read.
 *
 * Fitted to R-12, R-134a, R-502, R-22, R-407C and R-410A, L 9.5 to 25.4 mm, D 1.09 to 1.94 mm
 * (abstract). A vehicle's tube of 38 mm, and R-1234yf, lie outside: used all the same, and said so.
 */
const A = [0.38811, 11.427, -14.194, 1.0703, -0.091928, 21.425, -581.95] as const
const B = [1.1831, -1.468, -0.15285, -14.639, 9.8401, -0.019798, -1.5348, -2.0533, -17.195] as const

/** Beyond this subcooling, K, the formula's flow runs away (its denominator goes through zero). */
const MOST_SUBCOOLING_K = 15
/** Width, K, over which the subcooling is led into that limit. */
const EASE_K = 3

interface Tube {
  readonly length: number
  readonly diameter: number
}

interface Upstream {
  /** Saturation at the pressure in front of the tube. */
  readonly at: Saturation
  /** K of the liquid. */
  readonly liquidK: number
  /** Vapour by mass, 0 for liquid. */
  readonly quality: number
}

/** kg/(s·m²) of liquid, saturated or subcooled. */
export function tubeFlux(fluid: Fluid, tube: Tube, upstream: Upstream): number {
  const { at } = upstream
  const { criticalPressurePa, criticalTemperatureK, bubble, dew } = fluid.refrigerant
  const subcooling = eased(Math.max(0, at.bubbleK - upstream.liquidK))
  // the liquid's temperature, held to the limit as well, so that all the inputs fit together
  const kelvin = at.bubbleK - subcooling
  const liquidDensity = bubble.density(kelvin)
  const p3 = (at.pressurePa - bubble.pressure(kelvin)) / criticalPressurePa
  const p6 = dew.density(kelvin) / liquidDensity
  const p9 = subcooling / criticalTemperatureK
  const p10 = tube.length / tube.diameter
  const p1 =
    (A[0] + A[1] * p3 + A[2] * p9 + A[3] * p6 + A[4] * Math.log(p10)) /
    (1 + A[5] * p3 + A[6] * p9 * p9)
  return p1 * Math.sqrt(liquidDensity * criticalPressurePa)
}

/** Rises like its argument, then levels off at the limit, without a corner. */
function eased(subcoolingK: number): number {
  const over = subcoolingK - (MOST_SUBCOOLING_K - EASE_K)
  if (over <= 0) return subcoolingK
  return MOST_SUBCOOLING_K - EASE_K * Math.exp(-over / EASE_K)
}

/** From this quality on the published factor stands alone; below it is led into 1. */
const BLEND_QUALITY = 0.03
/** Beyond this quality the factor follows the square root of the density instead: outside the data. */
const LAST_QUALITY = 0.12

/** How much vapour in front cuts the flow of saturated liquid: 1 without any, less the more there is. */
export function twoPhaseFactor(fluid: Fluid, tube: Tube, upstream: Upstream): number {
  const x = upstream.quality
  if (!(x > 0)) return 1
  if (x <= LAST_QUALITY) {
    const published = Math.min(1, factor(fluid, tube, upstream.at, x))
    if (x >= BLEND_QUALITY) return published
    const end = Math.min(1, factor(fluid, tube, upstream.at, BLEND_QUALITY))
    // a parabola through 1 and the published value, whose slope at 0 is half of its mean
    const share = x / BLEND_QUALITY
    return 1 - (1 - end) * (0.5 * share + 0.5 * share * share)
  }
  const last = Math.min(1, factor(fluid, tube, upstream.at, LAST_QUALITY))
  return last * Math.sqrt(mixtureShare(upstream.at, x) / mixtureShare(upstream.at, LAST_QUALITY))
}

/** Density of the mixture over that of its liquid. */
export function mixtureShare(at: Saturation, x: number): number {
  return 1 / (1 - x + (x * at.liquidDensity) / at.vapourDensity)
}

function factor(fluid: Fluid, tube: Tube, at: Saturation, x: number): number {
  const pc = fluid.refrigerant.criticalPressurePa
  const t6 = mixtureShare(at, x)
  const t28 = at.pressurePa / pc
  const t34 = (x / (1 - x)) * Math.sqrt(at.liquidDensity / at.vapourDensity)
  // boiling refrigerant stands at its saturation pressure: t32 and t35 are one
  const log32 = Math.log(1 - t28)
  const log27 = Math.log(tube.length / tube.diameter)
  return (
    (B[0] * t6 +
      B[1] * t6 * t6 +
      B[2] * Math.log(t6) ** 2 +
      (B[3] + B[4]) * log32 * log32 +
      B[5] * log27 * log27) /
    (1 + B[6] * t6 + B[7] * t34 + B[8] * t28 ** 3)
  )
}
