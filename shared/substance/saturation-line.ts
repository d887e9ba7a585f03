import { CalcError } from '../errors.ts'
import { attempt } from './attempt.ts'
import { type Condition, type Line, type SaturationPoint, saturationPoint } from './equilibrium.ts'
import { firstGuess } from './first-guess.ts'
import type { Multifluid } from './multifluid.ts'

/** A bubble or dew line followed from the cold to the critical region. */
export interface SaturationLine {
  readonly fluid: Multifluid
  readonly composition: Float64Array
  readonly line: Line
  /** Points in order of rising temperature; the last has a contrast of {@link LAST_CONTRAST}. */
  readonly points: readonly SaturationPoint[]
}

/** Step in ln T while the phases differ much. */
const STEP = 0.03
/** From this contrast |ln ρ′/ρ″| on, the contrast is what is stepped. */
const SWITCH = 2.5
const CONTRAST_STEP = 0.15
/** Where following a line stops: 2 % between the densities. */
const LAST_CONTRAST = 0.02
const MAXIMUM_POINTS = 200
/** Starts tried, each 6 % warmer than the last. */
const RUNGS = 8
/** Up to this fraction of the mean critical temperature a guess is near enough. */
const DIRECT_UP_TO = 0.8

/**
 * Follow the bubble or dew line of a composition from `fromK` up to the critical region.
 *
 * Each point starts from the last one and the line's own slope, so the search cannot jump to
 * another root; once the phases become alike the density contrast is prescribed instead of the
 * temperature, which rules out the trivial root.
 */
export function followLine(
  fluid: Multifluid,
  composition: Float64Array,
  line: Line,
  fromK: number,
): SaturationLine {
  const sign = line === 'bubble' ? 1 : -1
  let here = startOfLine(fluid, composition, line, fromK)
  const points = [here]
  for (let count = 0; count < MAXIMUM_POINTS; count += 1) {
    const contrast = contrastOf(here)
    if (contrast <= LAST_CONTRAST * 1.0001) return { fluid, composition, line, points }
    if (contrast > SWITCH) {
      const temperatureK = here.temperatureK * Math.exp(STEP)
      here = solve(here, { temperatureK }, STEP)
    } else {
      // finer towards the end, where the line bends
      const next = Math.max(LAST_CONTRAST, contrast - Math.min(CONTRAST_STEP, 0.25 * contrast))
      here = solve(here, { contrast: sign * next }, stepFor(here, next - contrast))
    }
    points.push(here)
  }
  throw new CalcError('no-convergence', `The ${line} line did not reach its critical region.`, {
    hint: 'Start the line at a warmer temperature.',
  })

  function solve(from: SaturationPoint, condition: Condition, logT: number): SaturationPoint {
    return saturationPoint(fluid, composition, line, condition, predict(from, logT))
  }
}

/** The point of a line at a temperature in K; starts from the nearest point below. */
export function pointOnLine(path: SaturationLine, temperatureK: number): SaturationPoint {
  const [first, last] = [path.points[0], path.points.at(-1)]
  if (first === undefined || last === undefined) {
    throw new CalcError('no-convergence', 'The line has no points.')
  }
  let near = first
  for (const candidate of path.points) {
    if (
      Math.abs(candidate.temperatureK - temperatureK) < Math.abs(near.temperatureK - temperatureK)
    ) {
      near = candidate
    }
  }
  const guess = predict(near, Math.log(temperatureK / near.temperatureK))
  return saturationPoint(path.fluid, path.composition, path.line, { temperatureK }, guess)
}

/**
 * One bubble or dew point at a temperature in K, without following the whole line: straight from a
 * guess where that works, else from a colder point, walked up.
 *
 * @throws {CalcError} `no-convergence`, above the critical point among others.
 */
export function pointAt(
  fluid: Multifluid,
  composition: Float64Array,
  line: Line,
  temperatureK: number,
): SaturationPoint {
  const scale = fluid.components.reduce(
    (sum, c, i) => sum + c.critical.temperatureK * (composition[i] as number),
    0,
  )
  const fromK = Math.min(temperatureK, DIRECT_UP_TO * scale)
  return walkTo(fluid, composition, startOfLine(fluid, composition, line, fromK), temperatureK)
}

/** |ln ρ′/ρ″|. */
export function contrastOf(found: SaturationPoint): number {
  return Math.log(found.liquid.density / found.vapour.density)
}

/** Where the unknowns will be a step of ln T further along the line. */
function predict(from: SaturationPoint, logT: number): Float64Array {
  return from.unknowns.map((u, k) => u + logT * (from.tangent[k] as number))
}

/** Change of ln T that brings this change of contrast, by the line's slope. */
function stepFor(from: SaturationPoint, change: number): number {
  const other = from.line === 'bubble' ? from.vapour.x : from.liquid.x
  let slope = from.tangent[1] as number
  other.forEach((x, i) => {
    slope -= x * (from.tangent[2 + i] as number)
  })
  const step = (from.line === 'bubble' ? change : -change) / slope
  return Math.sign(step) * Math.min(Math.abs(step), STEP)
}

/**
 * The first point: straight from the guess where that works, otherwise from a warmer point, where
 * mixtures are tamer, followed down to `fromK`.
 */
function startOfLine(
  fluid: Multifluid,
  composition: Float64Array,
  line: Line,
  fromK: number,
): SaturationPoint {
  for (let rung = 0; rung < RUNGS; rung += 1) {
    const warmer = fromK * Math.exp(2 * STEP * rung)
    const found = attempt(() => {
      const guess = firstGuess(fluid, composition, line, warmer)
      return saturationPoint(fluid, composition, line, { temperatureK: warmer }, guess)
    })
    if (found !== undefined) return walkTo(fluid, composition, found, fromK)
  }
  throw new CalcError(
    'no-convergence',
    `No ${line} point was found near ${fromK} K to start the line from.`,
    { hint: 'Start at another temperature, well below the critical point.' },
  )
}

/** Along the line from a point to a temperature in K, step by step. */
function walkTo(
  fluid: Multifluid,
  composition: Float64Array,
  from: SaturationPoint,
  temperatureK: number,
): SaturationPoint {
  let here = from
  const total = Math.log(temperatureK / from.temperatureK)
  const steps = Math.ceil(Math.abs(total) / STEP)
  for (let k = 0; k < steps; k += 1) {
    const next = here.temperatureK * Math.exp(total / steps)
    const guess = predict(here, total / steps)
    here = saturationPoint(fluid, composition, from.line, { temperatureK: next }, guess)
  }
  return here
}
