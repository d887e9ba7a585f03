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

/** Columns of a fit: 1, time as a share of the watch, 1 − e^−t/τ, and −e^−t/τ. */
type Column = 'one' | 'line' | 'risen' | 'left'

/** Weighted sums over the readings: of each two columns, and of each with the pressures. */
interface Sums {
  readonly with: (a: Column, b: Column) => number
  readonly withPressure: (a: Column) => number
}

/**
 * For a given time constant every shape is linear in its other figures: start, step and slope follow
 * from normal equations whose sums take one pass over the readings, shared by all shapes.
 */
export function riseSolver(points: readonly RisePoint[], scatter: GaugeScatter): RiseSolver {
  const count = points.length
  const origin = points[0]?.timeS ?? 0
  const spanS = Math.max((points.at(-1)?.timeS ?? 0) - origin, 1e-9)
  const times = Float64Array.from(points, ({ timeS }) => timeS - origin)
  const pressures = Float64Array.from(points, ({ pressurePa }) => pressurePa)
  const weights = pressures.map((pressurePa) => 1 / scatter.sigmaOf(pressurePa) ** 2)
  const line = times.map((timeS) => timeS / spanS)
  const risen = new Float64Array(count)
  const still = stillSums(weights, line, pressures)
  let moving: Sums = still
  let evaluations = 0
  let filledFor = Number.NaN

  const fill = (constantS: number) => {
    if (constantS === filledFor) return
    filledFor = constantS
    for (let i = 0; i < count; i += 1) risen[i] = 1 - Math.exp(-(times[i] as number) / constantS)
    moving = movingSums(still, weights, line, risen, pressures)
    evaluations += count
  }

  /** @param basePa - Level that the pressures are measured from. */
  const solved = (
    model: RiseModel,
    constantS: number,
    columns: readonly Column[],
    basePa: number,
  ): RiseFit => {
    const sums = Number.isFinite(constantS) ? moving : still
    const { solution, lastFactor } = normalEquations(columns, sums, basePa)
    const of = (column: Column) => solution[columns.indexOf(column)] ?? 0
    const stepPa = of('risen') + of('left')
    const startPa = columns.includes('left') ? basePa - stepPa : of('one')
    const perSpan = of('line')
    let squares = 0
    for (let i = 0; i < count; i += 1) {
      const predicted = startPa + stepPa * (risen[i] as number) + perSpan * (line[i] as number)
      squares += (weights[i] as number) * ((pressures[i] as number) - predicted) ** 2
    }
    const sigma = Math.sqrt(variance({ model, squares }, count, scatter))
    return {
      model,
      startPa,
      stepPa,
      constantS,
      squares,
      slope: perSpan / spanS,
      slopeUncertainty: columns.at(-1) === 'line' ? (lastFactor * sigma) / spanS : 0,
      bic: criterion({ model, squares }, count, scatter),
    }
  }

  return {
    flat: solved('flat', Number.POSITIVE_INFINITY, ['one'], 0),
    steady: solved('steady', Number.POSITIVE_INFINITY, ['one', 'line'], 0),
    free(constantS) {
      fill(constantS)
      return {
        levelling: solved('levelling', constantS, ['one', 'risen'], 0),
        both: solved('levelling-and-steady', constantS, ['one', 'risen', 'line'], 0),
      }
    },
    held({ model, constantS }, levelPa) {
      fill(constantS)
      // p − level = −gap·e^−t/τ + slope·t
      return solved(model, constantS, model === 'levelling' ? ['left'] : ['left', 'line'], levelPa)
    },
    evaluations: () => evaluations,
  }
}

function stillSums(weights: Float64Array, line: Float64Array, pressures: Float64Array): Sums {
  let [one, x, xx, y, xy] = [0, 0, 0, 0, 0]
  for (let i = 0; i < line.length; i += 1) {
    const weight = weights[i] as number
    const t = line[i] as number
    const p = pressures[i] as number
    one += weight
    x += weight * t
    xx += weight * t * t
    y += weight * p
    xy += weight * t * p
  }
  return {
    with: (a, b) => (a === 'one' ? (b === 'one' ? one : x) : b === 'one' ? x : xx),
    withPressure: (a) => (a === 'one' ? y : xy),
  }
}

/** The sums of the column 1 − e^−t/τ; those of −e^−t/τ, which is less by one, follow from them. */
function movingSums(
  still: Sums,
  weights: Float64Array,
  line: Float64Array,
  risen: Float64Array,
  pressures: Float64Array,
): Sums {
  let [e, ee, ex, ey] = [0, 0, 0, 0]
  for (let i = 0; i < line.length; i += 1) {
    const weighted = (weights[i] as number) * (risen[i] as number)
    e += weighted
    ee += weighted * (risen[i] as number)
    ex += weighted * (line[i] as number)
    ey += weighted * (pressures[i] as number)
  }
  const one = still.with('one', 'one')
  const x = still.with('one', 'line')
  const table: Readonly<Record<string, number>> = {
    'one risen': e,
    'risen risen': ee,
    'line risen': ex,
    'left left': ee - 2 * e + one,
    'left line': ex - x,
  }
  return {
    with: (a, b) => table[a < b ? `${a} ${b}` : `${b} ${a}`] ?? still.with(a, b),
    withPressure: (a) =>
      a === 'risen' ? ey : a === 'left' ? ey - still.withPressure('one') : still.withPressure(a),
  }
}

/** Solution of the normal equations, and the root of the last diagonal entry of their inverse. */
function normalEquations(columns: readonly Column[], sums: Sums, basePa: number) {
  const size = columns.length
  const matrix = new Float64Array(size * size)
  const right = new Float64Array(size)
  columns.forEach((a, i) => {
    right[i] = sums.withPressure(a) - basePa * sumOf(a, sums)
    columns.forEach((b, j) => {
      // keeps two nearly equal columns (a very slow levelling beside a steady rise) solvable
      matrix[i * size + j] = sums.with(a, b) * (i === j ? 1 + 1e-12 : 1)
    })
  })
  const unit = new Float64Array(size)
  unit[size - 1] = 1
  const inverseColumn = solveLinear(matrix.slice(), unit)
  return {
    solution: [...solveLinear(matrix, right)],
    lastFactor: Math.sqrt(Math.max(inverseColumn[size - 1] ?? 0, 0)),
  }
}

const sumOf = (column: Column, sums: Sums): number =>
  column === 'left' ? sums.with('one', 'risen') - sums.with('one', 'one') : sums.with('one', column)
