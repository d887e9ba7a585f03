import { CalcError } from '../../errors.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { attempt } from '../../substance/attempt.ts'
import { type SaturationPoint, saturationPoint } from '../../substance/equilibrium.ts'
import { substanceData } from '../../substance/library.ts'
import { moleFractions } from '../../substance/mixture.ts'
import { type Multifluid, multifluid } from '../../substance/multifluid.ts'
import { pointAt } from '../../substance/saturation-line.ts'

/** Two refrigerants together, whatever their shares. */
interface Mixed {
  readonly substances: readonly string[]
  /** Pressure in Pa of the mixed liquid with this mass share of the second, above 0, below 1. */
  pressure(massShare: number): number
}

/** Shares tried on the way up; between two of them the pressure is taken to run one way. */
const LADDER = [0.005, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.98]
const STEPS = 40
/** The pressure is met to this, relative. */
const TOLERANCE = 1e-7
/** Change of share over which the slope of the pressure is taken. */
const SLOPE_STEP = 1e-3
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

/** A mass share of the second refrigerant, and how the pressure there changes with it. */
export interface FoundShare {
  readonly share: number
  /** Pa per unit of share. */
  readonly slope: number
}

/**
 * Smallest mass share of the second refrigerant with which the liquid reads a pressure in Pa, or
 * undefined where no share does (or where the mixture has no liquid at this temperature).
 *
 * @param purePa - Bubble pressure of the expected refrigerant alone.
 */
export function shareThatReads(
  mixture: Mixed,
  purePa: number,
  wantedPa: number,
): FoundShare | undefined {
  let low: Tried = { share: 0, gap: purePa - wantedPa }
  if (low.gap === 0) return undefined
  for (const share of LADDER) {
    const pressurePa = attempt(() => mixture.pressure(share))
    if (pressurePa === undefined) return undefined
    const here = { share, gap: pressurePa - wantedPa }
    if (here.gap === 0 || Math.sign(here.gap) !== Math.sign(low.gap)) {
      const found = between(mixture, wantedPa, low, here)
      const beside = Math.min(found + SLOPE_STEP, 1 - SLOPE_STEP)
      const slope = (mixture.pressure(beside) - mixture.pressure(found)) / (beside - found)
      return { share: found, slope }
    }
    low = here
  }
  return undefined
}

interface Tried {
  readonly share: number
  /** Pressure there less the pressure wanted, Pa. */
  readonly gap: number
}

/** Regula falsi, with the gap of an end that stays halved (Illinois), so that neither end sticks. */
function between(mixture: Mixed, wantedPa: number, from: Tried, to: Tried): number {
  let [kept, newest] = [from, to]
  for (let step = 0; step < STEPS; step += 1) {
    const share = (kept.share * newest.gap - newest.share * kept.gap) / (newest.gap - kept.gap)
    const here = { share, gap: mixture.pressure(share) - wantedPa }
    if (Math.abs(here.gap) < TOLERANCE * wantedPa) return share
    kept = Math.sign(here.gap) === Math.sign(newest.gap) ? { ...kept, gap: kept.gap / 2 } : newest
    newest = here
  }
  throw new CalcError('no-convergence', 'No share of the other refrigerant was found.')
}
