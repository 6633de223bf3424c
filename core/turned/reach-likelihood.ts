import type { BandExtent } from './band-extents.ts';
import { radOf } from './circular-statistics.ts';
import { type CovarianceFactor, dotProduct, factorCovariance, solveCovariance } from './covariance.ts';
import { reachCovariance } from './support-prior.ts';

/** How likely a bushy plant shows such extents if its views were taken at given turns. */
export interface ReachLikelihood {
  /** Natural logarithm, up to a constant. */
  readonly logLikelihood: number;
  /** Kept for asking about a moved pot. */
  readonly factor: CovarianceFactor;
  readonly bands: readonly (readonly number[])[];
}

/** Leaves and cut-out together, one standard deviation of a band's extent, % of the ball's radius. */
const OWN_PERCENT = 1.2;
/** How far a view's axis may be misread, one standard deviation, % of the ball's radius: 1.5 mm on a middling plant. */
const AXIS_PERCENT = 1;
/** Extents are taken off this before the covariance's wide size prior sees them, % of the ball's radius. */
const USUAL_PERCENT = 80;

/**
 * Likelihood of the extents in all bands.
 *
 * @param extents one list of bands a view, % of the ball's radius
 * @param turnsDeg as supposed
 * @param leanRad how far a near camera's sight lines lean in at the ball's edge: asin(radius ÷ distance), 0 from far away
 *
 * How: in each band the extents are readings of one smooth closed line round the plant, at azimuths turn ± 90 (less the lean). Its swings are those
 * of `support-prior.ts`; bands are taken as independent, which they are not, so the caller weighs the sum down.
 *
 * Reference: Rasmussen and Williams (2006), Gaussian Processes for Machine Learning, eq. 2.30.
 */
export function reachLikelihood(
  extents: readonly (readonly (BandExtent | null)[])[],
  turnsDeg: readonly number[],
  leanRad: number,
): ReachLikelihood | null {
  const azimuths = turnsDeg.flatMap((turn) => {
    const rad = radOf(turn);
    return [rad + Math.PI / 2 - leanRad, rad - Math.PI / 2 + leanRad];
  });
  const factor = factorCovariance(azimuths.length, (row, column) => {
    const shape = reachCovariance((azimuths[row] as number) - (azimuths[column] as number));
    // Right and left of one view stand next to each other; a misread axis makes one larger and the other smaller.
    const sameView = row >> 1 === column >> 1;
    const axis = sameView ? (row === column ? 1 : -1) * AXIS_PERCENT ** 2 : 0;
    return shape + axis + (row === column ? OWN_PERCENT ** 2 : 0);
  });
  if (factor === null) return null;
  const bands = bandReadings(extents);
  const logLikelihood = bands.reduce(
    (sum, band) => sum - 0.5 * (dotProduct(band, solveCovariance(factor, band)) + factor.logDeterminant),
    0,
  );
  return { logLikelihood, factor, bands };
}

/**
 * How much likelier the extents become when some views show the pot moved sideways.
 *
 * @returns the likeliest move, % of the ball's radius, right positive, and how the gain in log likelihood falls with distance from it
 */
export function sidewaysGain(
  { factor, bands }: ReachLikelihood,
  moved: readonly number[],
): { likeliest: number; gainAt: (asidePercent: number) => number } {
  const push = Array.from({ length: factor.size }, (_, k) => {
    if (!moved.includes(Math.floor(k / 2))) return 0;
    return k % 2 === 0 ? 1 : -1;
  });
  const solved = solveCovariance(factor, push);
  const pull = bands.reduce((sum, band) => sum + dotProduct(solved, band), 0);
  const bend = bands.length * dotProduct(push, solved);
  return {
    likeliest: bend > 1e-9 ? pull / bend : 0,
    gainAt: (aside) => pull * aside - 0.5 * bend * aside * aside,
  };
}

/** Right and left extent of every view, one list a band; bands that are empty in a view are left out. */
function bandReadings(extents: readonly (readonly (BandExtent | null)[])[]): number[][] {
  const count = extents[0]?.length ?? 0;
  return Array.from({ length: count }, (_, band) =>
    extents.flatMap((view) => {
      const extent = view[band];
      return extent ? [extent.right - USUAL_PERCENT, extent.left - USUAL_PERCENT] : [];
    }),
  ).filter((readings) => readings.length === 2 * extents.length);
}
