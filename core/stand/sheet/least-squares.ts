/** A fit by least squares: the numbers found, their covariance by the slopes at the end, and what is left over. */
export interface LeastSquaresFit {
  readonly values: readonly number[];
  /** Inverse of JᵀJ: the covariance when the residuals are in standard deviations. `null` when they fix not all numbers. */
  readonly covariance: readonly (readonly number[])[] | null;
  readonly sumOfSquares: number;
}

const ROUNDS = 60;

/**
 * Finds numbers that make residuals small (Levenberg 1944, Marquardt 1963), slopes by small differences.
 *
 * @param residuals from numbers to what is left over; always as many
 * @param start numbers to begin with
 * @param steps size of the difference for each number's slope; about its wanted accuracy
 */
export function leastSquares(
  residuals: (values: readonly number[]) => number[],
  start: readonly number[],
  steps: readonly number[],
): LeastSquaresFit {
  let values = [...start];
  let rest = residuals(values);
  let sum = squares(rest);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS; round++) {
    const slopes = slopesAt(residuals, values, steps);
    const normal = products(slopes);
    const pull = slopes.map((slope) => -dot(slope, rest));
    let better = false;
    while (damping < 1e9) {
      const damped = normal.map((row, i) =>
        row.map((cell, j) => (i === j ? cell * (1 + damping) + 1e-30 : cell)),
      );
      const change = solveLinear(damped, pull);
      const tried = change === null ? null : values.map((value, k) => value + (change[k] as number));
      const triedRest = tried === null ? null : residuals(tried);
      if (tried !== null && triedRest !== null && squares(triedRest) < sum) {
        const gain = sum - squares(triedRest);
        [values, rest] = [tried, triedRest];
        better = gain > 1e-12 * sum;
        sum -= gain;
        damping = Math.max(damping / 5, 1e-12);
        break;
      }
      damping *= 5;
    }
    if (!better) break;
  }
  return { values, covariance: inverse(products(slopesAt(residuals, values, steps))), sumOfSquares: sum };
}

/** Solves `matrix · x = right` by elimination with the largest pivot; `null` when the matrix is singular. */
export function solveLinear(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const size = right.length;
  const rows = matrix.map((row, k) => [...row, right[k] as number]);
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let r = k + 1; r < size; r++)
      if (Math.abs(cell(rows, r, k)) > Math.abs(cell(rows, pivot, k))) pivot = r;
    if (!(Math.abs(cell(rows, pivot, k)) > 0)) return null;
    [rows[k], rows[pivot]] = [rows[pivot] as number[], rows[k] as number[]];
    for (let r = 0; r < size; r++) {
      if (r === k) continue;
      const factor = cell(rows, r, k) / cell(rows, k, k);
      const row = rows[r] as number[];
      for (let c = k; c <= size; c++) row[c] = (row[c] as number) - factor * cell(rows, k, c);
    }
  }
  const solved = rows.map((row, k) => (row[size] as number) / (row[k] as number));
  return solved.every(Number.isFinite) ? solved : null;
}

function inverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const columns: number[][] = [];
  for (let k = 0; k < matrix.length; k++) {
    const column = solveLinear(
      matrix,
      matrix.map((_, row) => (row === k ? 1 : 0)),
    );
    if (column === null) return null;
    columns.push(column);
  }
  return columns;
}

/** One list of slopes for each number. */
function slopesAt(
  residuals: (values: readonly number[]) => number[],
  values: readonly number[],
  steps: readonly number[],
): number[][] {
  return values.map((_, k) => {
    const step = steps[k] as number;
    const up = residuals(values.map((value, at) => (at === k ? value + step : value)));
    const down = residuals(values.map((value, at) => (at === k ? value - step : value)));
    return up.map((value, at) => (value - (down[at] as number)) / (2 * step));
  });
}

function products(slopes: readonly (readonly number[])[]): number[][] {
  return slopes.map((one) => slopes.map((other) => dot(one, other)));
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, k) => sum + value * (other[k] as number), 0);
}

function squares(values: readonly number[]): number {
  return dot(values, values);
}

function cell(rows: readonly (readonly number[])[], row: number, column: number): number {
  return (rows[row] as readonly number[])[column] as number;
}
