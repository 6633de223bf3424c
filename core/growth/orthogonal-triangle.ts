/** A tall matrix turned into a triangle R by reflections, and the right side turned with it. */
export interface OrthogonalTriangle {
  /** Upper triangle, one list a row, from the diagonal's place on only. */
  readonly rows: readonly (readonly number[])[];
  /** The right side's part that the triangle can meet. */
  readonly right: readonly number[];
}

/**
 * Triangle of a least-squares problem: columns · x = right, more rows than columns.
 *
 * @param columns one list for each unknown, all as long as `right`
 * @returns R and the upper part of Qᵀ·right
 *
 * Notes: by reflections and not by JᵀJ, which loses half the digits where columns are nearly alike.
 *
 * Reference: Householder (1958); Golub and Van Loan (1996), Matrix Computations, algorithm 5.2.1.
 *
 * Example: columns [3, 4] and right [5, 0] give the row [−5] and the right side [−3].
 */
export function orthogonalTriangle(
  columns: readonly (readonly number[])[],
  right: readonly number[],
): OrthogonalTriangle {
  const unknowns = columns.length;
  const turned = [...columns, right].map((column) => Float64Array.from(column));
  for (let k = 0; k < unknowns; k++) {
    const pivot = turned[k] as Float64Array;
    const length = lengthFrom(pivot, k);
    if (length === 0) continue;
    const diagonal = (pivot[k] as number) > 0 ? -length : length;
    // The mirror's normal is the column's rest less its image; its square is 2·(length² − image·column).
    const normal = pivot.slice(k);
    normal[0] = (normal[0] as number) - diagonal;
    const half = diagonal * (normal[0] as number);
    for (let c = k; c <= unknowns; c++) reflect(turned[c] as Float64Array, k, normal, half);
  }
  return {
    rows: columns.map((_, row) => columns.map((__, c) => (c < row ? 0 : cell(turned, c, row)))),
    right: columns.map((_, row) => cell(turned, unknowns, row)),
  };
}

/** The unknowns; `null` when the columns do not fix them. */
export function solveTriangle({ rows, right }: OrthogonalTriangle): number[] | null {
  const solved = new Array<number>(right.length).fill(0);
  for (let row = right.length - 1; row >= 0; row--) {
    let rest = right[row] as number;
    for (let c = row + 1; c < right.length; c++) rest -= cell(rows, row, c) * (solved[c] as number);
    solved[row] = rest / cell(rows, row, row);
  }
  return solved.every(Number.isFinite) ? solved : null;
}

/** (RᵀR)⁻¹, the inverse of the normal matrix; `null` when the columns do not fix the unknowns. */
export function inverseOfSquare({ rows, right }: OrthogonalTriangle): number[][] | null {
  const size = right.length;
  const inverse: number[][] = [];
  for (let k = 0; k < size; k++) {
    const unit = right.map((_, row) => (row === k ? 1 : 0));
    const column = solveTriangle({ rows, right: unit });
    if (column === null) return null;
    inverse.push(column);
  }
  // inverse[k] is column k of R⁻¹, so the product of the rows of R⁻¹ is wanted.
  return inverse.map((_, i) =>
    inverse.map((__, j) =>
      inverse.reduce((sum, column) => sum + (column[i] as number) * (column[j] as number), 0),
    ),
  );
}

function reflect(column: Float64Array, from: number, normal: Float64Array, half: number): void {
  let dot = 0;
  for (let k = 0; k < normal.length; k++) dot += (normal[k] as number) * (column[from + k] as number);
  const share = dot / half;
  for (let k = 0; k < normal.length; k++) {
    column[from + k] = (column[from + k] as number) + share * (normal[k] as number);
  }
}

function lengthFrom(column: Float64Array, from: number): number {
  let largest = 0;
  for (let k = from; k < column.length; k++) largest = Math.max(largest, Math.abs(column[k] as number));
  if (largest === 0) return 0;
  let sum = 0;
  for (let k = from; k < column.length; k++) sum += ((column[k] as number) / largest) ** 2;
  return largest * Math.sqrt(sum);
}

function cell(lists: readonly ArrayLike<number>[], list: number, at: number): number {
  return (lists[list] as ArrayLike<number>)[at] as number;
}
