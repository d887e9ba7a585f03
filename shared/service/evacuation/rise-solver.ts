import { solveLinear } from '../../substance/linear-solve.ts'
import {
  criterion,
  type GaugeScatter,
  type RiseFit,
  type RiseModel,
  type RisePoint,
  variance,
} from './rise-shape.ts'

/** The shapes with a part that levels off, at one time constant. */
export interface Levellings {
  readonly levelling: RiseFit
  readonly both: RiseFit
}

/** Least squares over one series of readings. */
export interface RiseSolver {
  readonly flat: RiseFit
  readonly steady: RiseFit
  /** Both shapes at a time constant, s: their level free. */
  free(constantS: number): Levellings
  /** A shape that levels off, refitted with its level held at `levelPa`. */
  held(found: RiseFit, levelPa: number): RiseFit
  /** How often a reading was put into an exponential: the cost of the search. */
  evaluations(): number
}

/**
 * For a given time constant every shape is linear in its other figures: start, step and slope follow
 * from normal equations whose sums take one pass over the readings.
 */
export function riseSolver(points: readonly RisePoint[], scatter: GaugeScatter): RiseSolver {
  const count = points.length
  const origin = points[0]?.timeS ?? 0
  const spanS = Math.max((points.at(-1)?.timeS ?? 0) - origin, 1e-9)
  const times = Float64Array.from(points, ({ timeS }) => timeS - origin)
  const pressures = Float64Array.from(points, ({ pressurePa }) => pressurePa)
  const weights = pressures.map((pressurePa) => 1 / scatter.sigmaOf(pressurePa) ** 2)
  const ones = new Float64Array(count).fill(1)
  const line = times.map((timeS) => timeS / spanS)
  const risen = new Float64Array(count)
  const left = new Float64Array(count)
  let evaluations = 0
  let filledFor = Number.NaN

  /** Fills the columns 1 − e^−t/τ and −e^−t/τ. */
  const fill = (constantS: number) => {
    if (constantS === filledFor) return
    filledFor = constantS
    for (let i = 0; i < count; i += 1) {
      const rest = Math.exp(-(times[i] as number) / constantS)
      risen[i] = 1 - rest
      left[i] = -rest
    }
    evaluations += count
  }

  const solved = (
    model: RiseModel,
    constantS: number,
    columns: readonly Float64Array[],
    basePa: number,
    named: (solution: readonly number[]) => Pick<RiseFit, 'startPa' | 'stepPa'> & {
      readonly perSpan: number
    },
  ): RiseFit => {
    const { solution, lastFactor, squares } = leastSquares(columns, weights, pressures, basePa)
    const { startPa, stepPa, perSpan } = named(solution)
    const sigma = Math.sqrt(variance({ model, squares }, count, scatter))
    const steady = columns.at(-1) === line
    return {
      model,
      startPa,
      stepPa,
      constantS,
      squares,
      slope: perSpan / spanS,
      slopeUncertainty: steady ? (lastFactor * sigma) / spanS : 0,
      bic: criterion({ model, squares }, count, scatter),
    }
  }

  return {
    flat: solved('flat', Number.POSITIVE_INFINITY, [ones], 0, ([startPa = 0]) => ({
      startPa,
      stepPa: 0,
      perSpan: 0,
    })),
    steady: solved('steady', Number.POSITIVE_INFINITY, [ones, line], 0, ([startPa = 0, p = 0]) => ({
      startPa,
      stepPa: 0,
      perSpan: p,
    })),
    free(constantS) {
      fill(constantS)
      const both = [ones, risen, line]
      return {
        levelling: solved(
          'levelling',
          constantS,
          [ones, risen],
          0,
          ([startPa = 0, stepPa = 0]) => ({
            startPa,
            stepPa,
            perSpan: 0,
          }),
        ),
        both: solved(
          'levelling-and-steady',
          constantS,
          both,
          0,
          ([startPa = 0, stepPa = 0, p = 0]) => ({
            startPa,
            stepPa,
            perSpan: p,
          }),
        ),
      }
    },
    held({ model, constantS }, levelPa) {
      fill(constantS)
      // p − level = −gap·e^−t/τ + slope·t
      const columns = model === 'levelling' ? [left] : [left, line]
      return solved(model, constantS, columns, levelPa, ([gap = 0, p = 0]) => ({
        startPa: levelPa - gap,
        stepPa: gap,
        perSpan: p,
      }))
    },
    evaluations: () => evaluations,
  }
}

/** Solution of the normal equations, the root of the last diagonal entry of their inverse, and χ². */
function leastSquares(
  columns: readonly Float64Array[],
  weights: Float64Array,
  values: Float64Array,
  base: number,
) {
  const size = columns.length
  const matrix = new Float64Array(size * size)
  const right = new Float64Array(size)
  columns.forEach((column, i) => {
    right[i] = weighted(weights, column, values) - base * weightedSum(weights, column)
    for (let j = 0; j <= i; j += 1) {
      const entry = weighted(weights, column, columns[j] as Float64Array)
      matrix[i * size + j] = entry
      matrix[j * size + i] = entry
    }
  })
  for (let i = 0; i < size; i += 1) {
    // keeps two nearly equal columns (a very slow levelling beside a steady rise) solvable
    matrix[i * size + i] = (matrix[i * size + i] as number) * (1 + 1e-12)
  }
  const unit = new Float64Array(size)
  unit[size - 1] = 1
  const inverseColumn = solveLinear(matrix.slice(), unit)
  const solution = [...solveLinear(matrix, right)]
  return {
    solution,
    lastFactor: Math.sqrt(Math.max(inverseColumn[size - 1] ?? 0, 0)),
    squares: squaresOf(columns, weights, values, base, solution),
  }
}

function weighted(weights: Float64Array, a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i += 1) {
    sum += (weights[i] as number) * (a[i] as number) * (b[i] as number)
  }
  return sum
}

function weightedSum(weights: Float64Array, a: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i += 1) sum += (weights[i] as number) * (a[i] as number)
  return sum
}

function squaresOf(
  [a, b, c]: readonly Float64Array[],
  weights: Float64Array,
  values: Float64Array,
  base: number,
  [x = 0, y = 0, z = 0]: readonly number[],
): number {
  let sum = 0
  for (let i = 0; i < values.length; i += 1) {
    const predicted = base + x * (a?.[i] ?? 0) + y * (b?.[i] ?? 0) + z * (c?.[i] ?? 0)
    sum += (weights[i] as number) * ((values[i] as number) - predicted) ** 2
  }
  return sum
}
