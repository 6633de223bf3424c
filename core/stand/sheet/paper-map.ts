import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import { leastSquares, solveLinear } from './least-squares.ts';
import type { PointMm } from './sheet-geometry.ts';
import type { SheetFit } from './sheet-reading.ts';

/** A place on the paper and where it is seen. */
export interface PaperPair {
  readonly mm: PointMm;
  readonly px: PointPx;
  /** One standard deviation of either coordinate of `px`. */
  readonly doubtPx: number;
}

/** Three marks whose triangle is lower than this share of its longest side stand in a row: they fix no affine map. */
const ROW_SHARE = 0.15;

/**
 * How much a map can tell by as many marks as there are; `null` for fewer than two: two, or three in a row, give a
 * similarity (turn, size, place), three an affine map, four or more perspective.
 */
export function fitOf(pairs: readonly PaperPair[]): SheetFit | null {
  if (pairs.length < 2) return null;
  if (pairs.length > 3) return 'perspective';
  return pairs.length === 2 || isRow(pairs) ? 'similarity' : 'affine';
}

/**
 * The map from paper to photo: by least squares of the distances in the photo where there are more marks than needed.
 *
 * @returns `null` for fewer than two pairs, or pairs that fix no map
 */
export function paperMap(pairs: readonly PaperPair[]): Homography | null {
  switch (fitOf(pairs)) {
    case null:
      return null;
    case 'similarity':
      return similarity(pairs);
    case 'affine':
      return affine(pairs);
    case 'perspective':
      return perspective(pairs);
  }
}

function isRow(pairs: readonly PaperPair[]): boolean {
  const [a, b, c] = pairs.map(({ mm }) => mm) as [PointMm, PointMm, PointMm];
  const sides = [a, b, c].map((mm, k) => {
    const next = [b, c, a][k] as PointMm;
    return Math.hypot(next[0] - mm[0], next[1] - mm[1]);
  });
  const longest = Math.max(...sides);
  const doubleArea = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
  return doubleArea < ROW_SHARE * longest ** 2;
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

/** Least squares in closed form about the middles, as turn and size are one complex factor. */
function similarity(pairs: readonly PaperPair[]): Homography | null {
  const middle = (of: (pair: PaperPair) => number) =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [mx, my] = [middle(({ mm }) => mm[0]), middle(({ mm }) => mm[1])];
  const [px, py] = [middle((pair) => pair.px[0]), middle((pair) => pair.px[1])];
  let [square, along, across] = [0, 0, 0];
  for (const { mm, px: seen } of pairs) {
    const [x, y, u, v] = [mm[0] - mx, mm[1] - my, seen[0] - px, seen[1] - py];
    square += x * x + y * y;
    along += u * x + v * y;
    across += v * x - u * y;
  }
  if (!(square > 0)) return null;
  const [a, b] = [along / square, across / square];
  return [a, -b, px - a * mx + b * my, b, a, py - b * mx - a * my, 0, 0, 1];
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
