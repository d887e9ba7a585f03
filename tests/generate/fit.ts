import { evaluator, type Pieces } from '../../shared/substance/chebyshev.ts'

const FEWEST = 5
const MOST = 24
const MOST_PIECES = 64

interface Wanted {
  readonly from: number
  readonly to: number
  /** The function to fit. */
  readonly exact: (x: number) => number
  /** The largest error allowed at x. */
  readonly allowed: (x: number) => number
}

/**
 * A piecewise Chebyshev series within the allowed error everywhere it is tried, as short as that
 * permits and with no more digits than that needs. Splits an interval that would need more than
 * MOST terms.
 */
export function fitSeries(wanted: Wanted): Pieces {
  const x: number[] = [wanted.from]
  const c: number[][] = []
  const todo: [number, number][] = [[wanted.from, wanted.to]]
  while (todo.length > 0) {
    const [from, to] = todo.pop() as [number, number]
    const found = fitOne({ ...wanted, from, to })
    if (found !== undefined) {
      c.push(found)
      x.push(to)
      continue
    }
    if (c.length + todo.length >= MOST_PIECES)
      throw new Error('too many pieces: not a smooth curve')
    const middle = (from + to) / 2
    todo.push([middle, to], [from, middle])
  }
  return { x, c }
}

function fitOne(wanted: Wanted): number[] | undefined {
  const { from, to, exact } = wanted
  const nodes = points(from, to, MOST)
  const values = nodes.map(exact)
  const full = coefficients(values)
  const between = [from, ...points(from, to, 2 * MOST + 1), to]
  const checks = between.map((x) => ({ x, exact: exact(x), allowed: wanted.allowed(x) }))
  const strictest = Math.min(...checks.map((check) => check.allowed))
  // Rounding each of n coefficients by half a unit must cost a small part of the error allowed.
  const unit = 10 ** Math.floor(Math.log10(strictest / 10))
  const digits = Math.max(0, Math.round(-Math.log10(unit)))
  for (let terms = FEWEST; terms <= MOST; terms += 1) {
    const rounded = full.slice(0, terms).map((value) => Number(value.toFixed(digits)))
    const f = evaluator({ x: [from, to], c: [rounded] })
    if (checks.every((check) => Math.abs(f(check.x) - check.exact) <= check.allowed)) return rounded
  }
  return undefined
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
