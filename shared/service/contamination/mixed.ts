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
  /** Bubble points solved so far. */
  readonly solves: number
  /**
   * Pressure in Pa of the mixed liquid with this mass share of the second, 0 to 1.
   *
   * @throws {CalcError} where the mixture has no liquid at the temperature.
   */
  pressure(massShare: number): number
}

/** A solved share. */
interface Solved {
  readonly massShare: number
  readonly point: SaturationPoint
}

/** A point this near in mass share is a good first guess. */
const CLOSE = 0.2

/**
 * The bubble pressure of `expected` mixed with `other` at a temperature in K, as a function of the
 * mass share of `other`. Each share is solved once, from the two nearest that were.
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
  const solved: Solved[] = []
  return {
    substances,
    get solves() {
      return solved.length
    },
    pressure(massShare) {
      if (massShare === 0) return saturationPressure(expected, temperatureK, 'bubble')
      if (massShare === 1) return saturationPressure(other, temperatureK, 'bubble')
      const near = nearest(solved, massShare)
      if (near[0]?.massShare === massShare) return near[0].point.pressurePa
      const point = solve(fluid, composition(massShare), temperatureK, massShare, near)
      solved.push({ massShare, point })
      return point.pressurePa
    },
  }
}

/** At most two of the solved shares that lie near, the nearest first. */
function nearest(solved: readonly Solved[], massShare: number): readonly Solved[] {
  const off = (entry: Solved) => Math.abs(entry.massShare - massShare)
  let [first, second]: (Solved | undefined)[] = []
  for (const entry of solved) {
    if (!first || off(entry) < off(first)) [first, second] = [entry, first]
    else if (!second || off(entry) < off(second)) second = entry
  }
  return [first, second].filter((entry) => entry !== undefined && off(entry) < CLOSE) as Solved[]
}

function solve(
  fluid: Multifluid,
  x: Float64Array,
  temperatureK: number,
  massShare: number,
  [first, second]: readonly Solved[],
): SaturationPoint {
  if (first === undefined) return pointAt(fluid, x, 'bubble', temperatureK)
  const along = second
    ? (massShare - first.massShare) / (second.massShare - first.massShare)
    : undefined
  const guess = first.point.unknowns.map((_, k) => {
    const one = beside(first.point, k)
    const straight = second && along ? along * (beside(second.point, k) - one) : 0
    return one + straight + (k < 2 ? 0 : Math.log(x[k - 2] as number))
  })
  return (
    attempt(() => saturationPoint(fluid, x, 'bubble', { temperatureK }, guess)) ??
    pointAt(fluid, x, 'bubble', temperatureK)
  )
}

/** An unknown of a point, those of the vapour beside what the liquid has of it: they change least with the share. */
const beside = ({ unknowns, liquid }: SaturationPoint, k: number) =>
  (unknowns[k] as number) - (k < 2 ? 0 : Math.log(liquid.x[k - 2] as number))
