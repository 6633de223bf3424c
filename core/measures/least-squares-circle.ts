import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { type Circle, meanPoint } from './circle.ts';

const MOST_STEPS = 200;

/**
 * Least-squares circle (LSCI): the circle with the smallest sum of squared distances of the points from it.
 *
 * @param points at least three, not all on a line, any unit
 * @param weights one a point, 0 or above, with three or more above 0; all 1 when left out
 * @returns centre and radius in the points' unit, or `null` when the points do not fix a circle
 *
 * Notes: geometric, not algebraic: the distance itself is squared. On a quarter arc the algebraic circle
 * (Kåsa) is too small by up to several parts in a thousand. Gauss–Newton from Kåsa's circle about the mean point, which
 * keeps the digits; agrees with the certified fits to 1e-9 and better.
 *
 * Reference: ISO 12181-1:2011; Gander, Golub and Strebel (1994), Least-squares fitting of circles and ellipses.
 *
 * Example: (1,0), (0,1), (−1,0), (0,−1) give centre (0, 0), radius 1.
 */
export function leastSquaresCircle(points: readonly PointPx[], weights?: Float64Array): Circle | null {
  requireAtLeast(points.length, 3, 'points.length');
  const middle = meanPoint(points);
  const centred = points.map(([x, y]): PointPx => [x - middle[0], y - middle[1]]);
  const weightOf = weights ?? new Float64Array(points.length).fill(1);
  const start = kasaCentre(centred, weightOf);
  if (start === null) return null;

  let centre = start;
  let error = errorAbout(centred, weightOf, centre);
  for (let step = 0; step < MOST_STEPS; step++) {
    const move = gaussNewtonMove(centred, weightOf, centre);
    if (move === null) return null;
    // Halve a step that makes the fit worse. Near the optimum the sum is flat to rounding while the step
    // still gains digits, hence the hair's breadth.
    let [share, better] = [1, false];
    for (; share > 1e-4 && !better; share /= 2) {
      const tried: PointPx = [centre[0] + share * move[0], centre[1] + share * move[1]];
      const triedError = errorAbout(centred, weightOf, tried);
      if (triedError.sumOfSquares <= error.sumOfSquares * (1 + 1e-12)) {
        centre = tried;
        error = triedError;
        better = true;
      }
    }
    if (!better || Math.hypot(...move) <= 1e-15 * error.radius) break;
  }
  return { centre: [centre[0] + middle[0], centre[1] + middle[1]], radius: error.radius };
}

/**
 * Kåsa's algebraic circle: the linear least-squares start of the geometric fit.
 *
 * Reference: Kåsa (1976), A circle fitting procedure and its error analysis.
 */
export function kasaCircle(points: readonly PointPx[]): Circle | null {
  requireAtLeast(points.length, 3, 'points.length');
  const middle = meanPoint(points);
  const centred = points.map(([x, y]): PointPx => [x - middle[0], y - middle[1]]);
  const centre = kasaCentre(centred, new Float64Array(points.length).fill(1));
  if (centre === null) return null;
  const meanSquare =
    centred.reduce((sum, [x, y]) => sum + (x - centre[0]) ** 2 + (y - centre[1]) ** 2, 0) / points.length;
  return { centre: [centre[0] + middle[0], centre[1] + middle[1]], radius: Math.sqrt(meanSquare) };
}

function kasaCentre(points: readonly PointPx[], weights: Float64Array): PointPx | null {
  // Normal equations of x² + y² = 2ax + 2by + c with the weighted mean taken out.
  let [sum, meanX, meanY, meanZ] = [0, 0, 0, 0];
  points.forEach(([x, y], index) => {
    const weight = weights[index] as number;
    sum += weight;
    meanX += weight * x;
    meanY += weight * y;
    meanZ += weight * (x * x + y * y);
  });
  if (!(sum > 0)) return null;
  [meanX, meanY, meanZ] = [meanX / sum, meanY / sum, meanZ / sum];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  points.forEach(([x, y], index) => {
    const weight = weights[index] as number;
    const [dx, dy, dz] = [x - meanX, y - meanY, x * x + y * y - meanZ];
    xx += weight * dx * dx;
    xy += weight * dx * dy;
    yy += weight * dy * dy;
    xz += weight * dx * dz;
    yz += weight * dy * dz;
  });
  const solved = solveTwo(xx, xy, yy, xz / 2, yz / 2);
  return solved;
}

/** For a fixed centre the best radius is the mean distance. */
function errorAbout(points: readonly PointPx[], weights: Float64Array, centre: PointPx) {
  let [sum, sumDistance] = [0, 0];
  const distances = new Float64Array(points.length);
  points.forEach(([x, y], index) => {
    const weight = weights[index] as number;
    const distance = Math.hypot(x - centre[0], y - centre[1]);
    distances[index] = distance;
    sum += weight;
    sumDistance += weight * distance;
  });
  const radius = sumDistance / sum;
  let sumOfSquares = 0;
  distances.forEach((distance, index) => {
    sumOfSquares += (weights[index] as number) * (distance - radius) ** 2;
  });
  return { radius, sumOfSquares };
}

/** The Gauss–Newton step of the centre, the radius eliminated: directions with their mean taken out. */
function gaussNewtonMove(points: readonly PointPx[], weights: Float64Array, centre: PointPx): PointPx | null {
  let [sum, meanU, meanV, meanD] = [0, 0, 0, 0];
  const rows = points.map(([x, y], index) => {
    const distance = Math.hypot(x - centre[0], y - centre[1]);
    const [u, v] = distance > 0 ? [(x - centre[0]) / distance, (y - centre[1]) / distance] : [0, 0];
    const weight = weights[index] as number;
    sum += weight;
    meanU += weight * u;
    meanV += weight * v;
    meanD += weight * distance;
    return { weight, u, v, distance };
  });
  [meanU, meanV, meanD] = [meanU / sum, meanV / sum, meanD / sum];
  let [uu, uv, vv, ud, vd] = [0, 0, 0, 0, 0];
  for (const { weight, u, v, distance } of rows) {
    uu += weight * (u - meanU) ** 2;
    uv += weight * (u - meanU) * (v - meanV);
    vv += weight * (v - meanV) ** 2;
    ud += weight * (u - meanU) * (distance - meanD);
    vd += weight * (v - meanV) * (distance - meanD);
  }
  return solveTwo(uu, uv, vv, ud, vd);
}

/** Solves the symmetric pair xx·a + xy·b = xz, xy·a + yy·b = yz; `null` when the points lie on a line. */
function solveTwo(xx: number, xy: number, yy: number, xz: number, yz: number): PointPx | null {
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-13 * (xx + yy) ** 2)) return null;
  return [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant];
}
