import { azimuthOf, dot, length, subtract, type Vec3 } from './geometry/vector.ts';

const BALL_CELLS_DEG = 15;

/** Fits a sphere to the outermost point in each 15° cell of direction about `centre` (linear least squares). */
export function fitBall(points: readonly Vec3[], centre: Vec3): { centreMm: Vec3; radiusMm: number } | null {
  const outermost = new Map<string, { point: Vec3; far: number }>();
  for (const point of points) {
    const offset = subtract(point, centre);
    const elevation = elevationOf(offset);
    if (elevation < -30) continue;
    const around = Math.max(1, Math.round((360 / BALL_CELLS_DEG) * Math.cos((elevation * Math.PI) / 180)));
    const cell = `${Math.round(elevation / BALL_CELLS_DEG)} ${Math.floor((azimuthOf(offset) / 360) * around)}`;
    const far = length(offset);
    if (far > (outermost.get(cell)?.far ?? 0)) outermost.set(cell, { point, far });
  }
  const shell = [...outermost.values()].map((one) => one.point);
  if (shell.length < 12) return null;
  // |p|² = 2 p·c + (r² − |c|²) is linear in c and the bracket: solve its normal equations.
  const normal = Array.from({ length: 4 }, () => [0, 0, 0, 0, 0]);
  for (const point of shell) {
    const row = [2 * point[0], 2 * point[1], 2 * point[2], 1, dot(point, point)];
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 5; j++) {
        const line = normal[i] as number[];
        line[j] = (line[j] as number) + (row[i] as number) * (row[j] as number);
      }
    }
  }
  const [x, y, z, rest] = solve(normal) as [number, number, number, number];
  return { centreMm: [x, y, z], radiusMm: Math.sqrt(rest + x * x + y * y + z * z) };
}

/** Gauss-Jordan elimination with row exchange on rows of [coefficients…, right side]. */
function solve(rows: number[][]): number[] {
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let row = column; row < size; row++) {
      if (Math.abs(cell(rows, row, column)) > Math.abs(cell(rows, best, column))) best = row;
    }
    [rows[column], rows[best]] = [rows[best] as number[], rows[column] as number[]];
    const lead = cell(rows, column, column);
    rows[column] = (rows[column] as number[]).map((value) => value / lead);
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = cell(rows, row, column);
      rows[row] = (rows[row] as number[]).map((value, at) => value - factor * cell(rows, column, at));
    }
  }
  return rows.map((row) => row[size] as number);
}

function cell(rows: readonly number[][], row: number, column: number): number {
  return (rows[row] as number[])[column] as number;
}

/** Degrees above level. */
export function elevationOf(offset: Vec3): number {
  return (Math.atan2(offset[2], Math.hypot(offset[0], offset[1])) * 180) / Math.PI;
}
