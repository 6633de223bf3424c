import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import { leastSquares, solveLinear } from './least-squares.ts';
import type { PointMm } from './sheet-geometry.ts';

/** A place on the paper and where it is seen. */
export interface PaperPair {
  readonly mm: PointMm;
  readonly px: PointPx;
  /** One standard deviation of either coordinate of `px`. */
  readonly doubtPx: number;
}

/**
 * The map from paper to photo by as many pairs as there are: two give a similarity (turn, size, place), three an affine
 * map, four or more perspective (least squares of the distances in the photo, each by its doubt).
 *
 * @returns `null` for fewer than two pairs, or pairs that fix no map (marks in a row)
 */
export function paperMap(pairs: readonly PaperPair[]): Homography | null {
  if (pairs.length < 2) return null;
  if (pairs.length === 2) return similarity(pairs[0] as PaperPair, pairs[1] as PaperPair);
  if (pairs.length === 3) return affine(pairs);
  return perspective(pairs);
}

export function mapPoint(map: Homography, [x, y]: readonly [number, number]): PointPx {
  const depth = map[6] * x + map[7] * y + map[8];
  return [(map[0] * x + map[1] * y + map[2]) / depth, (map[3] * x + map[4] * y + map[5]) / depth];
}

/** Slopes of a map at a place, px a mm: [∂x/∂right, ∂x/∂down, ∂y/∂right, ∂y/∂down]. */
export function slopesOfMap(map: Homography, at: PointMm): readonly [number, number, number, number] {
  const depth = map[6] * at[0] + map[7] * at[1] + map[8];
  const [x, y] = mapPoint(map, at);
  return [
    (map[0] - x * map[6]) / depth,
    (map[1] - x * map[7]) / depth,
    (map[3] - y * map[6]) / depth,
    (map[4] - y * map[7]) / depth,
  ];
}

/**
 * Centre of the ellipse that a circle on the paper makes in the photo: not the picture of the circle's centre when the
 * paper is tilted.
 *
 * Notes: the circle's dual conic `T diag(r², r², −1) Tᵀ` goes through the map as `H C Hᵀ`; an ellipse's centre is the
 * last column of its dual conic (Hartley, Zisserman 2004, Multiple View Geometry, §2.2–2.3).
 */
export function centreOfCircle(map: Homography, [x, y]: PointMm, radiusMm: number): PointPx {
  const [a, b, c, d, e, f, g, h, i] = map;
  const square = radiusMm ** 2;
  const dual = [
    [square - x * x, -x * y, -x],
    [-x * y, square - y * y, -y],
    [-x, -y, -1],
  ] as const;
  const last = dual.map(([p, q, r]) => p * g + q * h + r * i) as [number, number, number];
  const row = (p: number, q: number, r: number) => p * last[0] + q * last[1] + r * last[2];
  const depth = row(g, h, i);
  return [row(a, b, c) / depth, row(d, e, f) / depth];
}

function similarity(one: PaperPair, other: PaperPair): Homography | null {
  const [dx, dy] = [other.mm[0] - one.mm[0], other.mm[1] - one.mm[1]];
  const [px, py] = [other.px[0] - one.px[0], other.px[1] - one.px[1]];
  const square = dx * dx + dy * dy;
  if (!(square > 0)) return null;
  const [a, b] = [(px * dx + py * dy) / square, (py * dx - px * dy) / square];
  const [x, y] = one.mm;
  return [a, -b, one.px[0] - a * x + b * y, b, a, one.px[1] - b * x - a * y, 0, 0, 1];
}

function affine(pairs: readonly PaperPair[]): Homography | null {
  const rows = pairs.map(({ mm: [x, y] }) => [x, y, 1]);
  const across = solveLinear(
    rows,
    pairs.map(({ px }) => px[0]),
  );
  const down = solveLinear(
    rows,
    pairs.map(({ px }) => px[1]),
  );
  if (across === null || down === null) return null;
  const [a, b, c] = across as [number, number, number];
  const [d, e, f] = down as [number, number, number];
  return [a, b, c, d, e, f, 0, 0, 1];
}

/** Four pairs fix the map; more are settled from the first guess by least squares in the photo. */
function perspective(pairs: readonly PaperPair[]): Homography | null {
  const start = algebraic(pairs);
  if (start === null) return null;
  const asMap = (values: readonly number[]) => [...values, 1] as unknown as Homography;
  const residuals = (values: readonly number[]) =>
    pairs.flatMap(({ mm, px, doubtPx }) => {
      const [x, y] = mapPoint(asMap(values), mm);
      return [(x - px[0]) / doubtPx, (y - px[1]) / doubtPx];
    });
  return asMap(leastSquares(residuals, start, [1e-5, 1e-5, 1e-3, 1e-5, 1e-5, 1e-3, 1e-8, 1e-8]).values);
}

/** Eight numbers by the linear equations of all pairs, the ninth being 1: the paper's corner is in front of the camera. */
function algebraic(pairs: readonly PaperPair[]): number[] | null {
  // Paper in units of about its half size about its middle, so that all columns weigh alike.
  const [mx, my, unit] = [105, 145, 150];
  const rows: number[][] = [];
  const right: number[] = [];
  for (const { mm, px } of pairs) {
    const [x, y] = [(mm[0] - mx) / unit, (mm[1] - my) / unit];
    rows.push([x, y, 1, 0, 0, 0, -px[0] * x, -px[0] * y], [0, 0, 0, x, y, 1, -px[1] * x, -px[1] * y]);
    right.push(px[0], px[1]);
  }
  const columns = Array.from({ length: 8 }, (_, k) => rows.map((row) => row[k] as number));
  const product = (one: readonly number[], other: readonly number[]) =>
    one.reduce((sum, value, k) => sum + value * (other[k] as number), 0);
  const solved = solveLinear(
    columns.map((one) => columns.map((other) => product(one, other))),
    columns.map((one) => product(one, right)),
  );
  if (solved === null) return null;
  const [a, b, c, d, e, f, g, h] = solved as [number, number, number, number, number, number, number, number];
  const scaled = [a / unit, b / unit, c, d / unit, e / unit, f, g / unit, h / unit, 1] as const;
  const moved = [0, 3, 6].flatMap((row) => {
    const [p, q, r] = [scaled[row] as number, scaled[row + 1] as number, scaled[row + 2] as number];
    return [p, q, r - p * mx - q * my];
  });
  const last = moved[8] as number;
  return last > 0 ? moved.slice(0, 8).map((value) => value / last) : null;
}
