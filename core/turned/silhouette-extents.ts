import type { Mask } from '../raster/raster.ts';

/** How far the canopy reaches in one row of a mask, px: outer edges of its outermost pixels; `null` for an empty row. */
export type RowExtent = readonly [leftPx: number, rightPx: number] | null;

/** The canopy's extent in every row of a mask, top row first. */
export function rowExtents({ width, height, data }: Mask): RowExtent[] {
  return Array.from({ length: height }, (_, y) => {
    const row = data.subarray(y * width, (y + 1) * width);
    const left = row.indexOf(1);
    return left < 0 ? null : [left, row.lastIndexOf(1) + 1];
  });
}

/** The outermost of some rows, px; `null` when all are empty. */
export function widestExtent(rows: readonly RowExtent[]): RowExtent {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const row of rows) {
    if (row === null) continue;
    left = Math.min(left, row[0]);
    right = Math.max(right, row[1]);
  }
  return right > left ? [left, right] : null;
}
