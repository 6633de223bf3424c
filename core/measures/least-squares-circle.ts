import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { type Circle, distancesFrom, meanPoint } from './circle.ts';

const MOST_STEPS = 200;

/** Where the fit starts and when it stops. */
export interface CircleFit {
  /** One weight a point, 0 or above, with three or more above 0; all 1 when left out. */
  readonly weights?: Float64Array;
  /** A centre known to be near; Kåsa's when left out. */
  readonly from?: PointPx;
  /** A last step of the centre this small, share of the radius, ends the fit. */
  readonly finest?: number;
}

/** Ends where the digits do. */
const FINEST = 1e-15;

/**
 * Least-squares circle (LSCI): the circle with the smallest sum of squared distances of the points from it.
 *
 * @param points at least three, not all on a line, any unit
 * @param fit weights, start and end of the search
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
export function leastSquaresCircle(points: readonly PointPx[], fit: CircleFit = {}): Circle | null {
  requireAtLeast(points.length, 3, 'points.length');
  const middle = meanPoint(points);
  const centred = points.map(([x, y]): PointPx => [x - middle[0], y - middle[1]]);
  const { from, weights: weightOf = new Float64Array(points.length).fill(1), finest = FINEST } = fit;
  const start: PointPx | null =
    from === undefined ? kasaCentre(centred, weightOf) : [from[0] - middle[0], from[1] - middle[1]];
  if (start === null) return null;

  let centre = start;
  let error = errorAbout(centred, weightOf, centre);
  for (let step = 0; step < MOST_STEPS; step++) {
    const move = gaussNewtonMove(centred, weightOf, centre, error.distances);
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
    if (!better || Math.hypot(...move) <= finest * error.radius) break;
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
  const distances = distancesFrom(centre, points);
  let [sum, sumDistance] = [0, 0];
  for (let index = 0; index < distances.length; index++) {
    const weight = weights[index] as number;
    sum += weight;
    sumDistance += weight * (distances[index] as number);
  }
  const radius = sumDistance / sum;
  let sumOfSquares = 0;
  for (let index = 0; index < distances.length; index++) {
    sumOfSquares += (weights[index] as number) * ((distances[index] as number) - radius) ** 2;
  }
  return { radius, sumOfSquares, distances };
}

/** The Gauss–Newton step of the centre, the radius eliminated: directions with their mean taken out. */
function gaussNewtonMove(
  points: readonly PointPx[],
  weights: Float64Array,
  centre: PointPx,
  distances: Float64Array,
): PointPx | null {
  const across = new Float64Array(points.length);
  const down = new Float64Array(points.length);
  const centreX = centre[0];
  const centreY = centre[1];
  let sum = 0;
  let meanU = 0;
  let meanV = 0;
  let meanD = 0;
  for (let index = 0; index < points.length; index++) {
    const point = points[index] as PointPx;
    const distance = distances[index] as number;
    const weight = weights[index] as number;
    const u = distance > 0 ? (point[0] - centreX) / distance : 0;
    const v = distance > 0 ? (point[1] - centreY) / distance : 0;
    across[index] = u;
    down[index] = v;
    sum += weight;
    meanU += weight * u;
    meanV += weight * v;
    meanD += weight * distance;
  }
  meanU /= sum;
  meanV /= sum;
  meanD /= sum;
  let uu = 0;
  let uv = 0;
  let vv = 0;
  let ud = 0;
  let vd = 0;
  for (let index = 0; index < points.length; index++) {
    const weight = weights[index] as number;
    const u = (across[index] as number) - meanU;
    const v = (down[index] as number) - meanV;
    const d = (distances[index] as number) - meanD;
    uu += weight * u * u;
    uv += weight * u * v;
    vv += weight * v * v;
    ud += weight * u * d;
    vd += weight * v * d;
  }
  return solveTwo(uu, uv, vv, ud, vd);
}

/** Solves the symmetric pair xx·a + xy·b = xz, xy·a + yy·b = yz; `null` when the points lie on a line. */
function solveTwo(xx: number, xy: number, yy: number, xz: number, yz: number): PointPx | null {
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-13 * (xx + yy) ** 2)) return null;
  return [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant];
}
