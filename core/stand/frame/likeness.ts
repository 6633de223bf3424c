import type { GreyPicture } from '../../opencv/grey-pictures.ts';
import type { PointPx } from '../../raster/raster.ts';

/**
 * How alike two patches are: the normalised cross-correlation, -1 to 1; 0 where one of them is blank or cut by an edge.
 *
 * @param reachPx half the side of the square patch
 *
 * Notes: to the nearest px, which lowers the likeness of fine detail a little.
 */
export function likeness(
  one: GreyPicture,
  [oneX, oneY]: PointPx,
  other: GreyPicture,
  [otherX, otherY]: PointPx,
  reachPx: number,
): number {
  const [column, row] = [Math.floor(oneX), Math.floor(oneY)];
  const [otherColumn, otherRow] = [Math.floor(otherX), Math.floor(otherY)];
  if (!fits(one, column, row, reachPx) || !fits(other, otherColumn, otherRow, reachPx)) return 0;
  let [sum, otherSum, squares, otherSquares, products] = [0, 0, 0, 0, 0];
  for (let y = -reachPx; y <= reachPx; y++) {
    let at = (row + y) * one.width + column - reachPx;
    let otherAt = (otherRow + y) * other.width + otherColumn - reachPx;
    for (let x = -reachPx; x <= reachPx; x++, at++, otherAt++) {
      const [u, v] = [one.data[at] as number, other.data[otherAt] as number];
      sum += u;
      otherSum += v;
      squares += u * u;
      otherSquares += v * v;
      products += u * v;
    }
  }
  const count = (2 * reachPx + 1) ** 2;
  const spread = (squares - sum ** 2 / count) * (otherSquares - otherSum ** 2 / count);
  return spread > 0 ? (products - (sum * otherSum) / count) / Math.sqrt(spread) : 0;
}

function fits({ width, height }: GreyPicture, column: number, row: number, reachPx: number): boolean {
  return column >= reachPx && row >= reachPx && column < width - reachPx && row < height - reachPx;
}
