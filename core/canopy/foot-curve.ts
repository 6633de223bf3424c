import type { Mask } from '../raster/raster.ts';
import { axisAt, type PotSides } from './pot-sides.ts';

/** How much the rim is expected to open to the view: half its height ÷ half its width, and one standard deviation. */
export interface ExpectedOpening {
  readonly opening: number;
  readonly doubt: number;
}

/** What is expected of a plant photographed from slightly above when the foot shows nothing. */
export const USUAL_OPENING: ExpectedOpening = { opening: 0.18, doubt: 0.12 };
const FROM_FOOT_DOUBT = 0.06;
/** Usual focal length, share of the photo's longer side: the rim is seen flatter than the foot, being nearer to level. */
const FOCAL_SHARE = 2.2;
/** Share of the foot's half-width that is looked at: beyond it the foot is rounded. */
const FOOT_SHARE = 0.85;

/**
 * The rim's opening from the foot's curve: both are circles seen from above, the rim from less above than the foot by
 * the pot's height over the camera's distance.
 */
export function openingFromFoot(ware: Mask, sides: PotSides, longerSidePx: number): ExpectedOpening {
  const { width, height, data } = ware;
  const bottom = Math.floor(data.lastIndexOf(1) / width);
  if (bottom >= height - 2) return USUAL_OPENING;
  const top = Math.floor(data.indexOf(1) / width);
  const tall = bottom - top;
  const near = [...sides.left, ...sides.right].filter(({ y }) => y < bottom && y > bottom - 0.3 * tall);
  if (near.length < 4) return USUAL_OPENING;
  const half = near.reduce((sum, { out }) => sum + out, 0) / near.length;
  const middle = axisAt(sides.axis, bottom);
  let [n, su, sy, suu, suy] = [0, 0, 0, 0, 0];
  for (let x = Math.ceil(middle - FOOT_SHARE * half); x < middle + FOOT_SHARE * half; x++) {
    if (x < 0 || x >= width) continue;
    let y = bottom;
    while (y > bottom - half && data[y * width + x] === 0) y--;
    const u = half * Math.sqrt(1 - ((x + 0.5 - middle) / half) ** 2);
    [n, su, sy, suu, suy] = [n + 1, su + u, sy + y, suu + u * u, suy + u * y];
  }
  const spread = n * suu - su * su;
  if (n < 8 || spread <= 0) return USUAL_OPENING;
  const foot = (n * suy - su * sy) / spread;
  const opening = foot - tall / (FOCAL_SHARE * longerSidePx);
  return foot < 0.02 || opening > 0.7
    ? USUAL_OPENING
    : { opening: Math.max(0.02, opening), doubt: FROM_FOOT_DOUBT };
}
