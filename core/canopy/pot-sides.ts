import type { Mask } from '../raster/raster.ts';
import type { PixelShares } from './model/pixel-shares.ts';

/** One row in which a side of the pot stands clear: the row's middle and the side's distance from the axis, px. */
export interface SidePoint {
  readonly y: number;
  readonly out: number;
}

/** A pot's two sides, row by row where they stand clear before the background, px of the picture. */
export interface PotSides {
  /** The axis is the upright through `x`, leaning by `lean` px to the right per row upward from row `y`. */
  readonly axis: PotAxis;
  readonly left: readonly SidePoint[];
  readonly right: readonly SidePoint[];
}

export interface PotAxis {
  readonly x: number;
  readonly y: number;
  readonly lean: number;
  /** One standard deviation of `x`, px. */
  readonly doubtPx: number;
}

export function axisAt({ x, y, lean }: PotAxis, row: number): number {
  return x + lean * (y - row);
}

/** What lies this far outside a side decides whether the side is clear: background, or a leaf before or behind it. */
const OUTSIDE_PX = [2, 3, 4];
const CLEAR_SHARE = 0.55;
/** A clear side of few rows could be anything. */
const LEAST_ROWS = 5;
/** Steepest lean of an axis, px per row: cameras are held level to about two degrees. */
const MOST_LEAN = 0.04;

/**
 * Traces the sides of the pot marked by `ware` in the network's pot plane, to a fraction of a px where the share passes
 * one half. `null` when no side stands clear in enough rows to tell where the axis is.
 */
export function potSides(shares: PixelShares, ware: Mask): PotSides | null {
  const rows: { y: number; left: number; right: number; clearLeft: boolean; clearRight: boolean }[] = [];
  const { width } = shares;
  for (let y = 0; y < ware.height; y++) {
    const row = ware.data.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    const last = row.lastIndexOf(1);
    const at = y * width;
    rows.push({
      y: y + 0.5,
      left: first + 0.5 - beyondMiddle(shares, at + first, first > 0 ? -1 : 0),
      right: last + 0.5 + beyondMiddle(shares, at + last, last < width - 1 ? 1 : 0),
      clearLeft: first > 0 && isClear(shares, at, first, -1),
      clearRight: last < width - 1 && isClear(shares, at, last, 1),
    });
  }
  const both = rows.filter(({ clearLeft, clearRight }) => clearLeft && clearRight);
  if (both.length < LEAST_ROWS) return null;
  const axis = axisThrough(both.map(({ y, left, right }) => ({ y, x: (left + right) / 2 })));
  return {
    axis,
    left: rows
      .filter(({ clearLeft }) => clearLeft)
      .map(({ y, left }) => ({ y, out: axisAt(axis, y) - left })),
    right: rows
      .filter(({ clearRight }) => clearRight)
      .map(({ y, right }) => ({ y, out: right - axisAt(axis, y) })),
  };
}

/** How far beyond the middle of pixel `i` the pot's share passes one half, px. */
function beyondMiddle({ pot }: PixelShares, i: number, step: -1 | 0 | 1): number {
  const inside = pot[i] as number;
  const outside = pot[i + step] as number;
  return step === 0 || inside <= outside
    ? 0.5
    : Math.max(0, Math.min(1, (inside - 0.5) / (inside - outside)));
}

function isClear({ background, width }: PixelShares, row: number, x: number, side: -1 | 1): boolean {
  let sum = 0;
  for (const off of OUTSIDE_PX)
    sum += background[row + Math.max(0, Math.min(width - 1, x + side * off))] as number;
  return sum > CLEAR_SHARE * OUTSIDE_PX.length;
}

/** The straight line through the middles of the rows: median of slopes and of offsets (Theil 1950, Sen 1968). */
function axisThrough(middles: readonly { readonly x: number; readonly y: number }[]): PotAxis {
  const slopes: number[] = [];
  const far = Math.max(4, Math.floor(middles.length / 3));
  for (let one = 0; one + far < middles.length; one++) {
    for (let other = one + far; other < middles.length; other++) {
      const [a, b] = [middles[one], middles[other]] as [{ x: number; y: number }, { x: number; y: number }];
      slopes.push((a.x - b.x) / (b.y - a.y));
    }
  }
  const lean = Math.max(-MOST_LEAN, Math.min(MOST_LEAN, slopes.length === 0 ? 0 : median(slopes)));
  const y = median(middles.map((middle) => middle.y));
  const x = median(middles.map((middle) => middle.x + lean * (middle.y - y)));
  const off = median(middles.map((middle) => Math.abs(middle.x + lean * (middle.y - y) - x)));
  // 1.48 times the median of absolute deviations is the standard deviation of normal errors.
  return { x, y, lean, doubtPx: Math.hypot(0.3, 1.48 * off) };
}

export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] as number;
}

/** Half-width in every row down to `bottom`: what the sides show, straight between, and level beyond their ends. */
export function halfWidths(sides: PotSides, bottom: number): number[] {
  const rows = meanByRow(sides);
  const halves: number[] = Array.from({ length: bottom + 1 }, () => 0);
  for (let k = 0; k < rows.length; k++) {
    const [here, next] = [rows[k] as SidePoint, rows[k + 1]];
    const end = next === undefined ? bottom + 0.5 : next.y;
    for (let y = here.y; y <= end; y++) {
      const share = next === undefined ? 0 : (y - here.y) / (next.y - here.y);
      halves[Math.floor(y)] = here.out + share * ((next?.out ?? here.out) - here.out);
    }
  }
  const first = rows[0];
  if (first !== undefined) halves.fill(first.out, 0, Math.floor(first.y));
  return halves;
}

/** Mean of both sides in every row that shows one, top first. */
export function meanByRow({ left, right }: PotSides): SidePoint[] {
  const sums = new Map<number, [sum: number, count: number]>();
  for (const { y, out } of [...left, ...right]) {
    const [sum, count] = sums.get(y) ?? [0, 0];
    sums.set(y, [sum + out, count + 1]);
  }
  return [...sums]
    .map(([y, [sum, count]]) => ({ y, out: sum / count }))
    .sort((one, other) => one.y - other.y);
}
