import type { Mask, PointPx } from '../raster/raster.ts';
import type { RadialProfile } from '../silhouette/radial-profile.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';

/** A reduced copy of a mask with its outline moved. */
export interface WarpedMask {
  readonly mask: Mask;
  /** Mean x of the copy's pixels, in px of the original. */
  readonly centroidXPx: number;
}

/** Makes copies of one silhouette, each with its outline moved in its own way. */
export interface MaskWarper {
  /** Place of the copies' top-left corner in the original, px. */
  readonly origin: PointPx;
  /** Original px a px of a copy. */
  readonly pxPerPx: number;
  /**
   * @param outwardPx how far the canopy moves outwards, px, one value a direction of the profile
   * @param leanRad how far the canopy leans over to the right about the lean's foot; small
   */
  readonly warp: (outwardPx: Float64Array, leanRad: number) => WarpedMask;
}

/** Radius that the ball has in the copies, at most: small enough to be quick, large enough to keep shoots. */
const BALL_RADIUS = 90;
const MARGIN = 8;
const HIDDEN = -1;

/**
 * Moves a silhouette's outline in or out along the rays of a profile.
 *
 * @param silhouette px
 * @param ball its radius in px decides how far the copies are reduced
 * @param profile whose centre the rays start from and whose directions they follow
 * @param footYPx height that stays in place when the canopy leans, px
 * @returns a maker of reduced copies: each pixel of a copy asks the original where it came from
 *
 * Notes: a lean is a shear, which a turn by a degree or so is as good as. Nearest pixel and nearest direction, so a copy's edge is good to half a px of its own; compare copies
 * with copies only. Where the pot hides the outline nothing moves.
 *
 * Example: with all moves 0 the copy is the mask, reduced.
 */
export function maskWarper(
  { mask, leftPx, topPx, widthPx, heightPx }: Silhouette,
  ball: { readonly radiusPx: number },
  profile: RadialProfile,
  footYPx: number,
): MaskWarper {
  const pxPerPx = Math.max(1, ball.radiusPx / BALL_RADIUS);
  const marginPx = MARGIN * pxPerPx;
  const origin: PointPx = [leftPx - marginPx, topPx - marginPx];
  const width = Math.ceil((widthPx + 2 * marginPx) / pxPerPx);
  const height = Math.ceil((heightPx + 2 * marginPx) / pxPerPx);
  const [centreX, centreY] = profile.centre;
  const across = Float64Array.from(
    { length: width },
    (_, column) => origin[0] + (column + 0.5) * pxPerPx - centreX,
  );
  const down = (row: number) => origin[1] + (row + 0.5) * pxPerPx - centreY;

  // Where each pixel of a copy lies as seen from the centre is the same for all copies.
  const directions = new Int16Array(width * height);
  const distances = new Float32Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const place = row * width + column;
      directions[place] = nearestDirection(profile, across[column] as number, down(row));
      distances[place] = Math.hypot(across[column] as number, down(row));
    }
  }

  const warp = (outwardPx: Float64Array, leanRad: number): WarpedMask => {
    const data = new Uint8Array(width * height);
    let sumX = 0;
    let count = 0;
    for (let row = 0; row < height; row++) {
      const dy = down(row);
      // A small lean moves each row sideways by its height above the foot.
      const leanPx = leanRad * (footYPx - centreY - dy);
      for (let column = 0; column < width; column++) {
        const place = row * width + column;
        const direction = directions[place] as number;
        const distance = distances[place] as number;
        const moved = direction === HIDDEN ? 0 : (outwardPx[direction] as number);
        const share = distance > 0 ? Math.max(0, 1 - moved / distance) : 1;
        const fromX = Math.floor(centreX + (across[column] as number) * share - leanPx);
        const fromY = Math.floor(centreY + dy * share);
        if (fromX < 0 || fromY < 0 || fromX >= mask.width || fromY >= mask.height) continue;
        if (mask.data[fromY * mask.width + fromX] === 0) continue;
        data[place] = 1;
        sumX += across[column] as number;
        count++;
      }
    }
    const centroidXPx = centreX + (count > 0 ? sumX / count : 0);
    return { mask: { width, height, data }, centroidXPx };
  };
  return { origin, pxPerPx, warp };
}

/** The profile's direction nearest to a vector, or `HIDDEN` behind the pot. */
function nearestDirection({ arc, stepRad, closed, radiiPx }: RadialProfile, x: number, y: number): number {
  const fullTurn = 2 * Math.PI;
  const turned = (((Math.atan2(y, x) - arc.startRad) % fullTurn) + fullTurn) % fullTurn;
  const direction = Math.round(turned / stepRad);
  if (direction < radiiPx.length) return direction;
  return closed ? direction - radiiPx.length : HIDDEN;
}
