import { radOf, turnBetween } from './circular-statistics.ts';
import { dotProduct, factorCovariance, solveCovariance } from './covariance.ts';
import type { SupportLine } from './support-line.ts';
import { reachCovariance } from './support-prior.ts';

/** Canopy half-width towards an azimuth: how far out the line square to it still touches canopy. */
export interface Reach {
  readonly azimuthDeg: number;
  /** Plan's unit. */
  readonly reach: number;
  /** 95 %. */
  readonly plusMinus: number;
  /** Whether a silhouette ends there; else it lies between such azimuths and is interpolated. */
  readonly measured: boolean;
}

/** This near to a silhouette's end an azimuth counts as measured, degrees. */
const MEASURED_WITHIN_DEG = 8;
const NORMAL_95 = 1.96;
/** What single leaves add that the smooth curve does not follow, one standard deviation, % of the ball's radius. */
const LEAF_PERCENT = 0.8;

/**
 * Reach all round the plant from the ends of its silhouettes.
 *
 * @param lines at least two support lines
 * @param options ball radius (plan's unit), one standard deviation of a silhouette's end, and the azimuths asked for
 * @returns one value an azimuth
 *
 * How: the values between the measured azimuths are the most likely ones of a periodic random function whose swings are those of
 * bushy plants (`support-prior.ts`): a smooth periodic curve through the measured ends, which says itself how unsure it is in
 * between. No value exceeds what the support lines allow.
 *
 * Notes: from an even number of evenly spread views over a whole turn opposite views measure the same two azimuths twice.
 *
 * Reference: Rasmussen and Williams (2006), Gaussian Processes for Machine Learning, eq. 2.25–2.26.
 *
 * Example: four lines of one distance at 0, 90, 180, 270 give that distance all round, least sure at 45.
 */
export function reachAllRound(
  lines: readonly SupportLine[],
  { ballRadius, endSd, azimuthsDeg }: { ballRadius: number; endSd: number; azimuthsDeg: readonly number[] },
): Reach[] {
  const percent = 100 / ballRadius;
  const azimuths = lines.map(({ azimuthDeg }) => radOf(azimuthDeg));
  const own = (endSd * percent) ** 2 + LEAF_PERCENT ** 2;
  const factor = factorCovariance(
    lines.length,
    (row, column) =>
      reachCovariance((azimuths[row] as number) - (azimuths[column] as number)) + (row === column ? own : 0),
  );
  if (factor === null)
    throw new RangeError('The covariance of the reach is not positive: two support lines have NaN azimuths.');
  const weights = solveCovariance(
    factor,
    lines.map(({ distance }) => distance * percent - 100),
  );
  return azimuthsDeg.map((azimuthDeg) => {
    const covariance = azimuths.map((azimuth) => reachCovariance(radOf(azimuthDeg) - azimuth));
    const reach = (100 + dotProduct(covariance, weights)) / percent;
    const variance = reachCovariance(0) - dotProduct(covariance, solveCovariance(factor, covariance));
    return {
      azimuthDeg,
      reach: Math.min(reach, mostReach(lines, azimuthDeg)),
      plusMinus: (NORMAL_95 * Math.sqrt(variance + LEAF_PERCENT ** 2)) / percent,
      measured: lines.some(
        (line) => Math.abs(turnBetween(line.azimuthDeg, azimuthDeg)) <= MEASURED_WITHIN_DEG,
      ),
    };
  });
}

/**
 * The farthest that canopy inside all support lines can reach towards an azimuth: the corner where the two lines next to it meet.
 *
 * @returns plan's unit; infinite when the lines next to it are half a turn apart or more
 */
function mostReach(lines: readonly SupportLine[], azimuthDeg: number): number {
  let most = Number.POSITIVE_INFINITY;
  for (const one of lines) {
    for (const other of lines) {
      const before = radOf(turnBetween(one.azimuthDeg, azimuthDeg));
      const after = radOf(turnBetween(azimuthDeg, other.azimuthDeg));
      const between = before + after;
      if (before < 0 || after < 0 || between >= Math.PI - 1e-6 || between < 1e-6) continue;
      most = Math.min(
        most,
        (one.distance * Math.sin(after) + other.distance * Math.sin(before)) / Math.sin(between),
      );
    }
  }
  return most;
}
