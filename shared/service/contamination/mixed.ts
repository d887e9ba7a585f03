import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { attempt } from '../../substance/attempt.ts'
import { type SaturationPoint, saturationPoint } from '../../substance/equilibrium.ts'
import { substanceData } from '../../substance/library.ts'
import { moleFractions } from '../../substance/mixture.ts'
import { type Multifluid, multifluid } from '../../substance/multifluid.ts'
import { pointAt } from '../../substance/saturation-line.ts'

/** Two refrigerants together, whatever their shares. */
export interface Mixed {
  readonly substances: readonly string[]
  /**
   * Pressure in Pa of the mixed liquid with this mass share of the second, 0 to 1.
   *
   * @throws {CalcError} where the mixture has no liquid at the temperature.
   */
  pressure(massShare: number): number
}

/** A point this near in mass share is a good first guess. */
const CLOSE = 0.2

/**
 * The bubble pressure of `expected` mixed with `other` at a temperature in K, as a function of the
 * mass share of `other`. An answer starts from the last one where that lies near.
 */
export function mixed(expected: Refrigerant, other: Refrigerant, temperatureK: number): Mixed {
  const substances = [
    ...new Set([...expected.info.composition, ...other.info.composition].map((c) => c.substance)),
  ]
  const fluid = multifluid(substances.map(substanceData))
  const shares = [expected, other].map((r) =>
    substances.map((s) => r.info.composition.find((c) => c.substance === s)?.massFraction ?? 0),
  )
  const composition = (massShare: number) => {
    const masses = substances.map(
      (_, i) => (1 - massShare) * (shares[0]?.[i] ?? 0) + massShare * (shares[1]?.[i] ?? 0),
    )
    return Float64Array.from(moleFractions(masses, fluid.molarMasses))
  }
  let last: { readonly massShare: number; readonly point: SaturationPoint } | undefined
  return {
    substances,
    pressure(massShare) {
      if (massShare === 0) return saturationPressure(expected, temperatureK, 'bubble')
      if (massShare === 1) return saturationPressure(other, temperatureK, 'bubble')
      const close = last !== undefined && Math.abs(massShare - last.massShare) < CLOSE
      const from = close ? last?.point : undefined
      const point = near(fluid, composition(massShare), temperatureK, from)
      last = { massShare, point }
      return point.pressurePa
    },
  }
}

function near(
  fluid: Multifluid,
  x: Float64Array,
  temperatureK: number,
  last: SaturationPoint | undefined,
): SaturationPoint {
  if (last === undefined) return pointAt(fluid, x, 'bubble', temperatureK)
  const guess = last.unknowns.map((u, k) =>
    k < 2 ? u : u + Math.log((x[k - 2] as number) / (last.liquid.x[k - 2] as number)),
  )
  return (
    attempt(() => saturationPoint(fluid, x, 'bubble', { temperatureK }, guess)) ??
    pointAt(fluid, x, 'bubble', temperatureK)
  )
}
