import type { LabPicture } from '../raster/lab.ts';

/** The line where a wall meets the table or floor, by its row at the left and the right edge of the picture. */
export interface TableLine {
  readonly leftY: number;
  readonly rightY: number;
}

/** Strip at either side that is looked at, share of the width. */
const STRIP_SHARE = 0.04;
/** Rows looked at: the table ends between these shares of the height. */
const HIGHEST_SHARE = 0.2;
const LOWEST_SHARE = 0.97;
/** Least change of colour within a few rows, ΔE; a softer change is a horizon without a line. */
const LEAST_STEP = 4;

/**
 * Finds the line between wall and table from the strips at the left and right edge: in each the row that best parts it
 * into two straight colour runs (least squares). `null` unless both strips show one.
 */
export function findTableLine(picture: LabPicture): TableLine | null {
  const strip = Math.max(3, Math.round(STRIP_SHARE * picture.width));
  const leftY = partingRow(profileOf(picture, 0, strip));
  const rightY = partingRow(profileOf(picture, picture.width - strip, picture.width));
  return leftY === null || rightY === null ? null : { leftY, rightY };
}

/** How far pixel `i` lies above the line, px; negative below. */
export function heightAbove(line: TableLine, { width }: { readonly width: number }, i: number): number {
  const y = Math.floor(i / width);
  const share = (i - y * width + 0.5) / width;
  return line.leftY + share * (line.rightY - line.leftY) - (y + 0.5);
}

export function isAbove(line: TableLine, size: { readonly width: number }, i: number): boolean {
  return heightAbove(line, size, i) > 0;
}

type Profile = readonly [Float64Array, Float64Array, Float64Array];

function profileOf({ width, height, l, a, b }: LabPicture, from: number, to: number): Profile {
  return [l, a, b].map((plane) =>
    Float64Array.from({ length: height }, (_, y) => {
      let sum = 0;
      for (let x = from; x < to; x++) sum += plane[y * width + x] as number;
      return sum / (to - from);
    }),
  ) as unknown as Profile;
}

function partingRow(profile: Profile): number | null {
  const height = profile[0].length;
  const runs = profile.map(runningSums);
  let [best, bestCost] = [-1, Number.POSITIVE_INFINITY];
  for (let y = Math.round(HIGHEST_SHARE * height); y < LOWEST_SHARE * height; y++) {
    let cost = 0;
    for (const sums of runs) cost += lineMisfit(sums, 0, y) + lineMisfit(sums, y, height);
    if (cost < bestCost) [best, bestCost] = [y, cost];
  }
  if (best < 0) return null;
  const reach = 4;
  const step = Math.hypot(
    ...profile.map((values) => meanOf(values, best + 2, reach) - meanOf(values, best - 2 - reach, reach)),
  );
  return step < LEAST_STEP ? null : best;
}

function meanOf(values: Float64Array, from: number, count: number): number {
  const part = values.subarray(Math.max(0, from), Math.max(0, from + count));
  return part.length === 0 ? 0 : part.reduce((sum, value) => sum + value, 0) / part.length;
}

/** Running sums of v, v², y, y² and yv, for misfits of straight runs in constant time. */
interface Running {
  readonly v: Float64Array;
  readonly vv: Float64Array;
  readonly yv: Float64Array;
}

function runningSums(values: Float64Array): Running {
  const [v, vv, yv] = [0, 1, 2].map(() => new Float64Array(values.length + 1)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let y = 0; y < values.length; y++) {
    const value = values[y] as number;
    v[y + 1] = (v[y] as number) + value;
    vv[y + 1] = (vv[y] as number) + value * value;
    yv[y + 1] = (yv[y] as number) + y * value;
  }
  return { v, vv, yv };
}

/** Squared misfit of the straight line through rows `from` up to `to`. */
function lineMisfit({ v, vv, yv }: Running, from: number, to: number): number {
  const n = to - from;
  if (n < 3) return 0;
  const sumV = (v[to] as number) - (v[from] as number);
  const sumVV = (vv[to] as number) - (vv[from] as number);
  const sumYV = (yv[to] as number) - (yv[from] as number);
  const meanY = (from + to - 1) / 2;
  const spreadY = (n * (n * n - 1)) / 12;
  const slopePart = sumYV - meanY * sumV;
  return Math.max(0, sumVV - (sumV * sumV) / n - (slopePart * slopePart) / spreadY);
}
