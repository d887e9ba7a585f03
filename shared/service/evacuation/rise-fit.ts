import { solveLinear } from '../../substance/linear-solve.ts'

/** One reading of the standing vacuum. */
export interface RisePoint {
  readonly timeS: number
  readonly pressurePa: number
}

/** p(t) = start + slope·t + step·(1 − exp(−t/constant)), fitted by least squares. */
export interface RiseFit {
  readonly model: RiseModel
  readonly startPa: number
  /** Steady rise, Pa/s. */
  readonly slope: number
  /** Standard uncertainty of the slope at the fitted time constant, Pa/s. */
  readonly slopeUncertainty: number
  /** Rise of the part that levels off, Pa. */
  readonly stepPa: number
  /** Time constant of that part, s. */
  readonly constantS: number
  readonly squares: number
  /** Bayesian information criterion: smaller is better, 6 and more is strong evidence. */
  readonly bic: number
}

type RiseModel = 'flat' | 'steady' | 'levelling' | 'levelling-and-steady'

/** What the gauge can tell apart from one reading to the next. */
export interface GaugeScatter {
  /** Standard deviation expected of a reading before the fit, Pa. */
  readonly sigmaOf: (pressurePa: number) => number
  /** How many readings that expectation is worth. */
  readonly weight: number
}

interface FitLimits {
  /** No levelling part may end above this, Pa: water cannot push higher than its vapour pressure. */
  readonly highestPlateauPa: number
  /** Slowest levelling that is looked for, s. */
  readonly slowestS: number
}

export interface RiseFits {
  readonly flat: RiseFit
  readonly steady: RiseFit
  readonly levelling: RiseFit
  readonly both: RiseFit
  /** Levelling fits that the data do not rule out against the best of their kind (ΔBIC below 4). */
  readonly possibleLevellings: readonly RiseFit[]
  /** Scatter about the best fit, as a multiple of what was expected of the gauge. */
  readonly scatter: number
  /** What was expected at the last reading, Pa. */
  readonly expectedSigmaPa: number
}

const GRID = 72
const POSSIBLE = 4
const REFINEMENTS = 4
/** Time constants that a watch must last for a levelling to be seen: 78 % of the way. */
export const LEVELLED = 1.5
const PARAMETERS: Readonly<Record<RiseModel, number>> = {
  flat: 1,
  steady: 2,
  levelling: 3,
  'levelling-and-steady': 4,
}

/**
 * Fits the four shapes that a standing vacuum can take.
 *
 * For a given time constant every shape is linear in its other figures, so the constant alone is
 * searched, over a logarithmic grid and finer ones about its best: no start values, nothing to diverge.
 * BIC as in G. Schwarz, Ann. Statist. 6, 461 (1978), with the unknown scatter integrated under a weak
 * expectation of what the gauge does, so that four points on a line do not count as a perfect gauge.
 *
 * @param points - At least four, times rising.
 */
export function fitRise(
  points: readonly RisePoint[],
  scatter: GaugeScatter,
  limits: FitLimits,
): RiseFits {
  const flat = fitShape(points, scatter, 'flat', Number.POSITIVE_INFINITY)
  const steady = fitShape(points, scatter, 'steady', Number.POSITIVE_INFINITY)
  const span = (points.at(-1)?.timeS ?? 0) - (points[0]?.timeS ?? 0)
  const at = (model: RiseModel, constantS: number) =>
    capped(fitShape(points, scatter, model, constantS), points, scatter, limits.highestPlateauPa)
  const scan = (model: RiseModel, slowestS: number) => {
    const coarse = timeConstants(points, slowestS).map((constantS) => at(model, constantS))
    const kept = coarse.filter(rises)
    return [...kept, ...refined(kept, slowestS, (constantS) => at(model, constantS))]
  }
  const levellings = scan('levelling', limits.slowestS)
  const levelling = best(levellings, { ...flat, model: 'levelling' })
  // a levelling slower than the watch would only be the steady rise under another name
  const both = best(scan('levelling-and-steady', span / LEVELLED), {
    ...steady,
    model: 'levelling-and-steady',
  })
  const smallest = Math.min(flat.bic, steady.bic, levelling.bic, both.bic)
  const chosen = [flat, steady, levelling, both].find(({ bic }) => bic === smallest) ?? flat
  return {
    flat,
    steady,
    levelling,
    both,
    possibleLevellings: levellings.filter(({ bic }) => bic <= levelling.bic + POSSIBLE),
    scatter: Math.sqrt(variance(chosen, points.length, scatter)),
    expectedSigmaPa: scatter.sigmaOf(points.at(-1)?.pressurePa ?? 0),
  }
}

const rises = ({ stepPa, slope }: RiseFit) => stepPa >= 0 && slope >= 0

/** Finer grids about the best of a coarse one: the last is narrower than any gauge can tell. */
function refined(
  coarse: readonly RiseFit[],
  slowestS: number,
  at: (constantS: number) => RiseFit,
): readonly RiseFit[] {
  const [first] = [...coarse].sort((one, other) => one.bic - other.bic)
  if (!first) return []
  let centre = first
  let width = 0.08
  for (let round = 0; round < REFINEMENTS; round += 1) {
    const finer = Array.from({ length: 9 }, (_, index) =>
      Math.min(centre.constantS * Math.exp(width * (index / 4 - 1)), slowestS),
    )
    centre = finer
      .map(at)
      .filter(rises)
      .reduce((kept, next) => (next.bic < kept.bic ? next : kept), centre)
    width /= 4
  }
  return [centre]
}

const best = (fits: readonly RiseFit[], otherwise: RiseFit): RiseFit =>
  fits.reduce((kept, next) => (next.bic < kept.bic ? next : kept), {
    ...otherwise,
    bic: otherwise.bic + 1e3,
  })

function timeConstants(points: readonly RisePoint[], slowestS: number): readonly number[] {
  const times = points.map(({ timeS }) => timeS)
  const span = (times.at(-1) ?? 0) - (times[0] ?? 0)
  const quickest = span / points.length / 2
  const ratio = Math.max(slowestS, 2 * quickest) / quickest
  return Array.from({ length: GRID }, (_, index) => quickest * ratio ** (index / (GRID - 1)))
}

function fitShape(
  points: readonly RisePoint[],
  scatter: GaugeScatter,
  model: RiseModel,
  constantS: number,
): RiseFit {
  const origin = points[0]?.timeS ?? 0
  const span = Math.max((points.at(-1)?.timeS ?? 0) - origin, 1e-9)
  const columns = (timeS: number): readonly number[] => {
    const x = (timeS - origin) / span
    const step = 1 - Math.exp(-(timeS - origin) / constantS)
    if (model === 'flat') return [1]
    if (model === 'steady') return [1, x]
    return model === 'levelling' ? [1, step] : [1, step, x]
  }
  const weights = points.map(({ pressurePa }) => 1 / scatter.sigmaOf(pressurePa))
  const rows = points.map(({ timeS }, index) =>
    columns(timeS).map((entry) => entry * (weights[index] ?? 0)),
  )
  const values = points.map(({ pressurePa }, index) => pressurePa * (weights[index] ?? 0))
  const { solution, slopeFactor } = leastSquares(rows, values)
  const [startPa = 0, second = 0, third = 0] = solution
  const stepPa = model === 'levelling' || model === 'levelling-and-steady' ? second : 0
  const perSpan = model === 'steady' ? second : third
  const squares = rows.reduce((total, row, index) => {
    const predicted = row.reduce((sum, entry, column) => sum + entry * (solution[column] ?? 0), 0)
    return total + ((values[index] ?? 0) - predicted) ** 2
  }, 0)
  const found = { model, startPa, slope: perSpan / span, stepPa, constantS, squares }
  const sigma = Math.sqrt(variance(found, points.length, scatter))
  return {
    ...found,
    slopeUncertainty: (slopeFactor * sigma) / span,
    bic: criterion(found, points.length, scatter),
  }
}

/** Solution of the normal equations, and the square root of the last diagonal entry of their inverse. */
function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]) {
  const size = rows[0]?.length ?? 1
  const normal = () => {
    const matrix = new Float64Array(size * size)
    for (const row of rows) {
      for (let i = 0; i < size; i += 1) {
        for (let j = 0; j < size; j += 1) {
          matrix[i * size + j] = (matrix[i * size + j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0)
        }
      }
    }
    // keeps two nearly equal columns (a very slow levelling beside a steady rise) solvable
    for (let i = 0; i < size; i += 1)
      matrix[i * size + i] = (matrix[i * size + i] ?? 0) * (1 + 1e-12)
    return matrix
  }
  const right = new Float64Array(size)
  rows.forEach((row, index) => {
    for (let i = 0; i < size; i += 1)
      right[i] = (right[i] ?? 0) + (row[i] ?? 0) * (values[index] ?? 0)
  })
  const unit = new Float64Array(size)
  unit[size - 1] = 1
  const inverseColumn = solveLinear(normal(), unit)
  return {
    solution: [...solveLinear(normal(), right)],
    slopeFactor: Math.sqrt(Math.max(inverseColumn[size - 1] ?? 0, 0)),
  }
}

/** Refits a levelling part that would end above the cap, with its plateau held there. */
function capped(
  found: RiseFit,
  points: readonly RisePoint[],
  scatter: GaugeScatter,
  capPa: number,
): RiseFit {
  if (found.startPa + found.stepPa <= capPa) return found
  const origin = points[0]?.timeS ?? 0
  const span = Math.max((points.at(-1)?.timeS ?? 0) - origin, 1e-9)
  // p − cap = −gap·exp(−t/constant) + slope·t
  const weights = points.map(({ pressurePa }) => 1 / scatter.sigmaOf(pressurePa))
  const rows = points.map(({ timeS }, index) => {
    const decay = -Math.exp(-(timeS - origin) / found.constantS)
    const row = found.model === 'levelling' ? [decay] : [decay, (timeS - origin) / span]
    return row.map((entry) => entry * (weights[index] ?? 0))
  })
  const values = points.map(({ pressurePa }, index) => (pressurePa - capPa) * (weights[index] ?? 0))
  const { solution, slopeFactor } = leastSquares(rows, values)
  const [gap = 0, perSpan = 0] = solution
  const squares = rows.reduce((total, row, index) => {
    const predicted = (row[0] ?? 0) * gap + (row[1] ?? 0) * perSpan
    return total + ((values[index] ?? 0) - predicted) ** 2
  }, 0)
  const refitted = {
    ...found,
    startPa: capPa - gap,
    stepPa: gap,
    slope: found.model === 'levelling' ? 0 : perSpan / span,
    squares,
  }
  const sigma = Math.sqrt(variance(refitted, points.length, scatter))
  return {
    ...refitted,
    slopeUncertainty: found.model === 'levelling' ? 0 : (slopeFactor * sigma) / span,
    bic: criterion(refitted, points.length, scatter),
  }
}

type Fitted = Pick<RiseFit, 'model' | 'squares'>

/** Of the readings in units of what was expected of the gauge; the expectation counts as `weight` readings. */
const variance = ({ model, squares }: Fitted, count: number, { weight }: GaugeScatter) =>
  (squares + weight) / (Math.max(count - PARAMETERS[model], 0) + weight)

const criterion = ({ model, squares }: Fitted, count: number, { weight }: GaugeScatter) =>
  (count + weight) * Math.log(squares + weight) + PARAMETERS[model] * Math.log(count)
