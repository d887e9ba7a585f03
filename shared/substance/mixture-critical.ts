import type { SaturationPoint } from './equilibrium.ts'
import { contrastOf, type SaturationLine } from './saturation-line.ts'

/** Where the bubble and the dew line of a composition meet. */
interface CriticalPoint {
  readonly temperatureK: number
  readonly pressurePa: number
  /** Difference between the critical temperatures of two interpolations, K: how sure it is. */
  readonly doubtK: number
}

/**
 * The critical point of a composition: bubble and dew line are one smooth curve over the signed
 * contrast ln(ρ given/ρ other), which passes through 0 there. Interpolated across, because the
 * equations say nothing at the point itself.
 */
export function criticalPoint(bubble: SaturationLine, dew: SaturationLine): CriticalPoint {
  const near = [...bubble.points.slice(-3), ...dew.points.slice(-3)]
  const inner = [...bubble.points.slice(-2), ...dew.points.slice(-2)]
  const temperatureK = atZero(near, (p) => p.temperatureK)
  return {
    temperatureK,
    pressurePa: atZero(near, (p) => p.pressurePa),
    doubtK: Math.abs(temperatureK - atZero(inner, (p) => p.temperatureK)),
  }
}

/** Lagrange's interpolation at contrast 0. */
function atZero(
  points: readonly SaturationPoint[],
  value: (point: SaturationPoint) => number,
): number {
  const s = points.map((p) => (p.line === 'bubble' ? 1 : -1) * contrastOf(p))
  return points.reduce((sum, point, i) => {
    const si = s[i] as number
    const weight = s.reduce((w, sj, j) => (j === i ? w : (w * -sj) / (si - sj)), 1)
    return sum + weight * value(point)
  }, 0)
}
