/** Some rows and columns of a picture, px; the ends are outside. */
export interface Rows {
  readonly from: number;
  readonly until: number;
  readonly left: number;
  readonly right: number;
}

/** A plane's sums along its rows, so that the sum between two columns is one subtraction. */
export interface RowSums extends Rows {
  readonly sums: Float64Array;
}

/** Sums of `valueAt(i)` over pixels `i` of a picture `width` px wide. */
export function rowSums(width: number, rows: Rows, valueAt: (i: number) => number): RowSums {
  const across = rows.right - rows.left + 1;
  const sums = new Float64Array(across * (rows.until - rows.from));
  for (let y = rows.from; y < rows.until; y++) {
    const at = (y - rows.from) * across - rows.left;
    let sum = 0;
    for (let x = rows.left; x < rows.right; x++) {
      sum += valueAt(y * width + x);
      sums[at + x + 1] = sum;
    }
  }
  return { ...rows, sums };
}

/** The sum over row `y` within `half` px of `middle`; beyond the columns kept nothing is added. */
export function sumAbout(
  { from, left, right, sums }: RowSums,
  y: number,
  middle: number,
  half: number,
): number {
  const at = (y - from) * (right - left + 1) - left;
  const one = Math.max(left, Math.min(right, Math.round(middle - half)));
  const other = Math.max(left, Math.min(right, Math.round(middle + half)));
  return (sums[at + other] as number) - (sums[at + one] as number);
}
