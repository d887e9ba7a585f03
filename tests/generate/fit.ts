import { evaluator } from '../../shared/substance/chebyshev.ts'
import { piecesOf, type SeriesFile } from '../../shared/substance/curve.ts'

const FEWEST = 5
const MOST = 32
const MOST_PIECES = 64
/** What a coefficient may be rounded to, as a share of the strictest error allowed; coarse first. */
const UNITS = [1, 0.5, 0.2, 0.1, 0.05]

interface Wanted {
  readonly from: number
  readonly to: number
  /** The function to fit. */
  readonly exact: (x: number) => number
  /** The largest error allowed at x. */
  readonly allowed: (x: number) => number
}

/**
 * A piecewise Chebyshev series within the allowed error everywhere it is tried, written as short
 * as any tried here: fewer terms leave room for coarser coefficients, more terms the other way.
 * Splits an interval that would need more than MOST terms.
 */
export function fitSeries(given: Wanted): SeriesFile {
  const wanted = { ...given, exact: remembered(given.exact) }
  const found = UNITS.flatMap((share) => {
    const series = fitWith(wanted, share)
    return series === undefined ? [] : [series]
  })
  const [shortest] = found.sort((a, b) => length(a) - length(b))
  if (shortest === undefined) throw new Error('too many pieces: not a smooth curve')
  return shortest
}

/** Each point is asked for once a unit, and costs a search or an equilibrium. */
function remembered(exact: Wanted['exact']): Wanted['exact'] {
  const known = new Map<number, number>()
  return (x) => {
    const value = known.get(x) ?? exact(x)
    known.set(x, value)
    return value
  }
}

const length = (series: SeriesFile) => JSON.stringify(series).length

function fitWith(wanted: Wanted, share: number): SeriesFile | undefined {
  const unit = round(share * Math.min(...checksOf(wanted).map((check) => check.allowed)), 1)
  const cuts: number[] = []
  const c: (readonly number[])[] = []
  const todo: [number, number][] = [[wanted.from, wanted.to]]
  while (todo.length > 0) {
    const [from, to] = todo.pop() as [number, number]
    const found = fitOne({ ...wanted, from, to }, unit)
    if (found !== undefined) {
      c.push(found)
      if (todo.length > 0) cuts.push(to)
      continue
    }
    if (c.length + todo.length >= MOST_PIECES) return undefined
    const middle = round((from + to) / 2, 4)
    todo.push([middle, to], [from, middle])
  }
  return { unit, ...(cuts.length === 0 ? {} : { cuts }), c }
}

/** Whole multiples of `unit`. */
function fitOne(wanted: Wanted, unit: number): readonly number[] | undefined {
  const { from, to, exact } = wanted
  const full = coefficients(points(from, to, MOST).map(exact))
  const checks = checksOf(wanted)
  for (let terms = FEWEST; terms <= MOST; terms += 1) {
    const whole = full.slice(0, terms).map((value) => Math.round(value / unit))
    const f = evaluator(piecesOf({ unit, c: [whole] }, from, to))
    if (checks.every((check) => Math.abs(f(check.x) - check.exact) <= check.allowed)) return whole
  }
  return undefined
}

function checksOf({ from, to, exact, allowed }: Wanted) {
  const between = [from, ...points(from, to, 3 * MOST + 1), to]
  return between.map((x) => ({ x, exact: exact(x), allowed: allowed(x) }))
}

/** To so many significant digits. */
export function round(value: number, digits: number): number {
  return Number(value.toPrecision(digits))
}

/** Chebyshev points of the first kind, rising. */
function points(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => {
    const u = -Math.cos((Math.PI * (k + 0.5)) / count)
    return (from + to) / 2 + (u * (to - from)) / 2
  })
}

/** Coefficients of the interpolating series through values at `points`. */
function coefficients(values: readonly number[]): number[] {
  const n = values.length
  return values.map((_, j) => {
    let sum = 0
    values.forEach((value, k) => {
      sum += value * Math.cos((Math.PI * j * (n - k - 0.5)) / n)
    })
    return (sum * (j === 0 ? 1 : 2)) / n
  })
}
