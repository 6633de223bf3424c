import { USUAL_OPENING } from '../canopy/foot-curve.ts';
import type { Pot } from '../canopy/found-plant.ts';
import type { PointPx } from '../raster/raster.ts';

/** The outer ends of the pot's rim as the grower set them on the photo, px. */
export interface RimByHand {
  readonly leftPx: PointPx;
  readonly rightPx: PointPx;
}

/**
 * How well a hand sets the rim's width, share of it as one standard deviation: each end to about two px on a screen where the
 * rim is 400 px wide. A judgement, no source.
 */
const HAND_DOUBT = 0.007;

/**
 * The pot with the rim as the grower set it in place of the one that was found.
 *
 * @param found the pot as found; `null` when none was
 * @param rim ends in px of the same picture, left first, apart
 * @returns the pot with these ends; how far the rim opens to the view stays in proportion to its width
 *
 * Example: ends at (100, 300) and (200, 300) put the axis at x 150, whatever was found before.
 */
export function potByHand(found: Pot | null, { leftPx, rightPx }: RimByHand): Pot {
  const halfWidthPx = Math.hypot(rightPx[0] - leftPx[0], rightPx[1] - leftPx[1]) / 2;
  if (!(halfWidthPx > 0)) throw new RangeError('Expected two ends of the rim that lie apart');
  const opening = found === null ? USUAL_OPENING.opening : found.rim.halfHeightPx / found.rim.halfWidthPx;
  return {
    rimLeftPx: leftPx,
    rimRightPx: rightPx,
    rim: {
      centrePx: [(leftPx[0] + rightPx[0]) / 2, (leftPx[1] + rightPx[1]) / 2],
      halfWidthPx,
      halfHeightPx: opening * halfWidthPx,
      heightSeen: found?.rim.heightSeen ?? false,
    },
    rimDoubtPx: 2 * halfWidthPx * HAND_DOUBT,
    // The ends themselves were set, so no misread row makes the rim wider.
    rimTaper: 0,
  };
}
