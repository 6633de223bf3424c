import type { SidePoint } from './pot-sides.ts';

/** Fewest rows for a straight side, and its steepest tapers: narrowing upward, and widening. */
const LEAST_ROWS = 6;
const LEAST_TAPER = -0.5;
const MOST_TAPER = 0.7;
/** Where leaves hide the side below the row, the topmost rows that show go on upward: this share of the reach, no steeper than pots are. */
const TOPMOST_SHARE = 0.45;
const MOST_HIDDEN_TAPER = 0.35;

/** A side as a straight line: half-width at a row, and half-width lost per px downward. */
export interface StraightSide {
  readonly half: number;
  readonly taper: number;
}

/**
 * A function from a row to the straight line (least squares) through the sides within `reach` px below it; where too few
 * rows show there, through the next ones further down. `null` below the last rows.
 *
 * Notes: a pot's band stands out from its body. A line through both is far too steep to be drawn on upward under the
 * leaves, so there only the topmost rows that show are taken.
 *
 * @param rows half-width by row, from the top down
 */
export function straightSides(
  rows: readonly SidePoint[],
  reach: number,
): (row: number) => StraightSide | null {
  // Running sums of 1, y, out, y² and y·out make every line cheap.
  const sums = rows.map(({ y, out }) => [1, y, out, y * y, y * out]);
  for (let k = 1; k < sums.length; k++) {
    for (let j = 0; j < 5; j++)
      (sums[k] as number[])[j] =
        ((sums[k] as number[])[j] as number) + ((sums[k - 1] as number[])[j] as number);
  }
  return (row) => {
    const first = rows.findIndex(({ y }) => y >= row);
    if (first < 0 || rows.length - first < LEAST_ROWS) return null;
    const topmost = Math.max(LEAST_ROWS, Math.round(TOPMOST_SHARE * reach));
    const isHidden = (rows[first] as SidePoint).y > row + topmost;
    let end = first;
    while (end < rows.length && (rows[end] as SidePoint).y <= row + reach) end++;
    if (isHidden || end - first < LEAST_ROWS) end = Math.min(rows.length, first + topmost);
    const [n, y, out, yy, yOut] = [0, 1, 2, 3, 4].map(
      (j) =>
        ((sums[end - 1] as number[])[j] as number) -
        (first > 0 ? ((sums[first - 1] as number[])[j] as number) : 0),
    ) as [number, number, number, number, number];
    const spread = yy - (y * y) / n;
    const slope = spread > 0 ? (yOut - (y * out) / n) / spread : 0;
    const most = isHidden ? MOST_HIDDEN_TAPER : MOST_TAPER;
    const taper = Math.max(LEAST_TAPER, Math.min(most, -slope));
    return { half: out / n + taper * (y / n - row - 0.5), taper };
  };
}
