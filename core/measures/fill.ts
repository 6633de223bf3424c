import type { Silhouette } from '../silhouette/silhouette.ts';

export interface Fill {
  /** Area ÷ hull area, above 0 and at most 1. */
  readonly solidity: number;
  /** Holes ÷ filled area, 0 to below 1. */
  readonly gapFraction: number;
}

/**
 * How well the canopy fills its hull, and how much of it is gaps that one can see through.
 *
 * @param silhouette px
 * @returns two ratios without unit
 *
 * Notes: area is the canopy's pixels without gaps; the hull goes round the pixels' corners, so a rectangle has
 * solidity 1 whatever its size.
 *
 * Reference: solidity A ÷ A_hull as in ISO 9276-6:2008.
 *
 * Example: an L of 80 × 80 less 40 × 40 has solidity 6/7 and no gaps.
 */
export function fillOf({ areaPx, filledAreaPx, hullAreaPx }: Silhouette): Fill {
  return { solidity: areaPx / hullAreaPx, gapFraction: (filledAreaPx - areaPx) / filledAreaPx };
}
