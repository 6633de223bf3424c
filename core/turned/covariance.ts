/** A symmetric positive matrix in its triangular form L, row by row, L·Lᵀ = matrix. */
export interface CovarianceFactor {
  readonly size: number;
  readonly lower: Float64Array;
  /** Natural logarithm of the determinant of the whole matrix. */
  readonly logDeterminant: number;
}

/**
 * Splits a covariance matrix for solving.
 *
 * @param size number of rows, at least 1
 * @param cell value at row and column, symmetric
 * @returns its triangular factor, or `null` when the matrix is not positive
 *
 * Reference: Cholesky's method, Golub and Van Loan (1996), Matrix Computations, algorithm 4.2.1.
 *
 * Example: [[4, 2], [2, 3]] has the factor [[2, 0], [1, √2]].
 */
export function factorCovariance(
  size: number,
  cell: (row: number, column: number) => number,
): CovarianceFactor | null {
  const lower = new Float64Array(size * size);
  let logDeterminant = 0;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = cell(row, column);
      for (let k = 0; k < column; k++)
        sum -= (lower[row * size + k] as number) * (lower[column * size + k] as number);
      if (row > column) lower[row * size + column] = sum / (lower[column * size + column] as number);
      else if (sum > 0) {
        lower[row * size + row] = Math.sqrt(sum);
        logDeterminant += Math.log(sum);
      } else return null;
    }
  }
  return { size, lower, logDeterminant };
}

/** Solves `matrix · x = right`. */
export function solveCovariance({ size, lower }: CovarianceFactor, right: ArrayLike<number>): Float64Array {
  const solved = Float64Array.from(right);
  for (let row = 0; row < size; row++) {
    let sum = solved[row] as number;
    for (let k = 0; k < row; k++) sum -= (lower[row * size + k] as number) * (solved[k] as number);
    solved[row] = sum / (lower[row * size + row] as number);
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = solved[row] as number;
    for (let k = row + 1; k < size; k++) sum -= (lower[k * size + row] as number) * (solved[k] as number);
    solved[row] = sum / (lower[row * size + row] as number);
  }
  return solved;
}

/** Sum of the products of two lists of one length. */
export function dotProduct(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < one.length; k++) sum += (one[k] as number) * (other[k] as number);
  return sum;
}
