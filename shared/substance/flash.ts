import { CalcError } from '../errors.ts'
import { attempt } from './attempt.ts'
import { type Line, type SaturationPoint, saturationPoint } from './equilibrium.ts'
import { firstGuess } from './first-guess.ts'
import { type Phase, phaseAt } from './fugacity.ts'
import type { Multifluid } from './multifluid.ts'
import { pointAt } from './saturation-line.ts'
import { splitPhases, type TwoPhase } from './two-phase.ts'

/** Counts equilibrium solves, so that a caller can bound its work. */
export interface Work {
  solves: number
}

/** What is known of a two-phase state beside its temperature: mol/m³ of the whole, or vapour by mass. */
export type Known = { readonly density: number } | { readonly quality: number }

/** Densities of the saturated phases of this composition, mol/m³, where curves have them. */
export interface Edges {
  readonly bubble: number
  readonly dew: number
}

/**
 * One mole of a mixture split into liquid and vapour at a temperature in K, by the density or the
 * quality of the whole.
 *
 * Starts between the bubble and the dew point (two solves) and ends by Newton's method (one), or,
 * where a state near by is known, by that one alone. Never iterates over flashes.
 *
 * @param z - Mole fractions, each above 0, summing to 1.
 * @param edges - Densities of both lines at this temperature: the state must lie between them.
 * @param near - A split of the same mixture near by.
 * @throws {CalcError} `no-convergence`.
 */
export function flash(
  fluid: Multifluid,
  z: Float64Array,
  temperatureK: number,
  known: Known,
  edges: Edges,
  near?: TwoPhase,
  work: Work = { solves: 0 },
): TwoPhase {
  const hold = 'density' in known ? { volume: 1 / known.density } : known
  const split = (guess: TwoPhase) => {
    work.solves += 1
    return attempt(() => splitPhases(fluid, temperatureK, z, hold, guess))
  }
  const beside = near && split(near)
  if (beside && isSplit(beside)) return beside
  const bubble = edgePoint(fluid, z, 'bubble', temperatureK, edges.bubble, work)
  const dew = edgePoint(fluid, z, 'dew', temperatureK, edges.dew, work)
  for (const shift of [0, 0.1, -0.1]) {
    const found = split(between(fluid, z, bubble, dew, known, shift))
    if (found && isSplit(found)) return found
  }
  throw new CalcError(
    'no-convergence',
    `The mixture splits at ${temperatureK} K, but the two phases were not found.`,
    { hint: 'The state may be at the critical point: move a little away from it.' },
  )
}

/** Both phases there (a little below nothing by rounding), the liquid the denser one. */
const isSplit = ({ liquid, vapour, liquidVolume, vapourVolume }: TwoPhase) => {
  const least = -1e-6 * (Math.abs(liquidVolume) + Math.abs(vapourVolume))
  return liquidVolume >= least && vapourVolume >= least && liquid.density > vapour.density
}

/** The bubble or dew point, from the density that the curves know. */
function edgePoint(
  fluid: Multifluid,
  z: Float64Array,
  line: Line,
  temperatureK: number,
  density: number,
  work: Work,
): SaturationPoint {
  work.solves += 1
  const guess = firstGuess(fluid, z, line, temperatureK)
  guess[1] = Math.log(density)
  const found = attempt(() => saturationPoint(fluid, z, line, { temperatureK }, guess))
  const given = line === 'bubble' ? found?.liquid : found?.vapour
  // another root than the curve's is none
  if (found && given && Math.abs(given.density / density - 1) < 1e-3) return found
  work.solves += 1
  return pointAt(fluid, z, line, temperatureK)
}

/** A first guess between both ends of the two-phase region: ln K runs from the one's to the other's. */
function between(
  fluid: Multifluid,
  z: Float64Array,
  bubble: SaturationPoint,
  dew: SaturationPoint,
  known: Known,
  shift: number,
): TwoPhase {
  const share = 'density' in known ? vapourShare(bubble, dew, known.density) : known.quality
  const beta = Math.min(Math.max(share + shift, 1e-6), 1 - 1e-6)
  const along = (from: number, to: number) => from * (to / from) ** beta
  const x = normal(
    z.map((zi, i) => {
      const k = along(at(bubble.vapour.x, i) / zi, zi / at(dew.liquid.x, i))
      return zi / (1 + beta * (k - 1))
    }),
  )
  const y = normal(z.map((zi, i) => Math.max((zi - (1 - beta) * at(x, i)) / beta, 1e-12)))
  const liquid = phase(fluid, bubble, along(bubble.liquid.density, dew.liquid.density), x)
  const vapour = phase(fluid, bubble, along(bubble.vapour.density, dew.vapour.density), y)
  return {
    liquid,
    vapour,
    liquidVolume: (1 - beta) / liquid.density,
    vapourVolume: beta / vapour.density,
  }
}

/** Share of the amount that is vapour, were both phases as their lines give them. */
function vapourShare(bubble: SaturationPoint, dew: SaturationPoint, density: number): number {
  const [liquid, vapour] = [bubble.liquid.density, dew.vapour.density]
  return (1 / density - 1 / liquid) / (1 / vapour - 1 / liquid)
}

const phase = (
  fluid: Multifluid,
  { temperatureK }: SaturationPoint,
  density: number,
  x: Float64Array,
): Phase => phaseAt(fluid, temperatureK, density, x)

function normal(x: Float64Array): Float64Array {
  const total = x.reduce((a, b) => a + b, 0)
  return x.map((xi) => xi / total)
}

const at = (values: ArrayLike<number>, index: number) => values[index] as number
