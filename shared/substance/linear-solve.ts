import { CalcError } from '../errors.ts'

/**
 * Solve A x = b by Gaussian elimination with partial pivoting; both are overwritten.
 *
 * `matrix` is n×n row by row. Throws `no-convergence` when a pivot vanishes.
 */
export function solveLinear(matrix: Float64Array, rightSide: Float64Array): Float64Array {
  const n = rightSide.length
  for (let column = 0; column < n; column += 1) {
    let pivot = column
    for (let row = column + 1; row < n; row += 1) {
      if (size(matrix, row, column, n) > size(matrix, pivot, column, n)) pivot = row
    }
    // written so that a NaN fails too
    if (!(size(matrix, pivot, column, n) > 0)) {
      throw new CalcError('no-convergence', 'A set of linear equations has no single solution.')
    }
    if (pivot !== column) swap(matrix, rightSide, pivot, column, n)
    eliminate(matrix, rightSide, column, n)
  }
  for (let row = n - 1; row >= 0; row -= 1) {
    let sum = rightSide[row] as number
    for (let k = row + 1; k < n; k += 1) {
      sum -= (matrix[row * n + k] as number) * (rightSide[k] as number)
    }
    rightSide[row] = sum / (matrix[row * n + row] as number)
  }
  return rightSide
}

function eliminate(matrix: Float64Array, rightSide: Float64Array, column: number, n: number): void {
  for (let row = column + 1; row < n; row += 1) {
    const factor = (matrix[row * n + column] as number) / (matrix[column * n + column] as number)
    if (factor === 0) continue
    for (let k = column; k < n; k += 1) {
      const here = row * n + k
      matrix[here] = (matrix[here] as number) - factor * (matrix[column * n + k] as number)
    }
    rightSide[row] = (rightSide[row] as number) - factor * (rightSide[column] as number)
  }
}

function swap(
  matrix: Float64Array,
  rightSide: Float64Array,
  a: number,
  b: number,
  n: number,
): void {
  for (let k = 0; k < n; k += 1) {
    const kept = matrix[a * n + k] as number
    matrix[a * n + k] = matrix[b * n + k] as number
    matrix[b * n + k] = kept
  }
  const kept = rightSide[a] as number
  rightSide[a] = rightSide[b] as number
  rightSide[b] = kept
}

function size(matrix: Float64Array, row: number, column: number, n: number): number {
  return Math.abs(matrix[row * n + column] as number)
}
