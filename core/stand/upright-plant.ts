import type { FoundPlant, Pot } from '../canopy/found-plant.ts';
import type { PointPx } from '../raster/raster.ts';
import { boundsInView, redrawMask } from './redraw-mask.ts';
import type { UprightView } from './upright-view.ts';

/** What of a cut-out is measured. */
export type MeasuredPlant = Pick<
  FoundPlant,
  'canopy' | 'certainty' | 'pot' | 'unsureZones' | 'edgeUncertaintyPx'
>;

/** A cut-out drawn anew in the upright view. */
export interface UprightPlant {
  readonly plant: MeasuredPlant;
  /** Px of the upright picture to px of the raster. */
  readonly toRaster: (point: PointPx) => PointPx;
}

/**
 * Draws a cut-out anew in the upright view, on a picture just large enough to lose nothing.
 *
 * @param found px of the raster
 * @returns the plant in px of the upright picture, with the way back
 *
 * Notes: a pixel is inside when half of it is covered, straight-line between the old pixels, so edges keep their place to a
 * few hundredths of a px. The rim's ends are put level, as they are in the stand: the pot finder takes them for level in the
 * photo, turned or not.
 */
export function uprightPlant(found: FoundPlant, view: UprightView): UprightPlant {
  const { canopy, pot, unsureZones } = found;
  const frame = boundsInView(view, canopy);
  const place = (point: PointPx): PointPx => {
    const [x, y] = view.toUpright(point);
    return [x - frame.left, y - frame.top];
  };
  const toRaster = ([x, y]: PointPx) => view.toRaster([x + frame.left, y + frame.top]);
  return {
    toRaster,
    plant: {
      ...found,
      canopy: redrawMask({ ...canopy, left: 0, top: 0 }, toRaster, { ...frame, left: 0, top: 0 }),
      pot: pot === null ? null : placedPot(pot, place),
      unsureZones: unsureZones.map((zone) => {
        const around = boundsInView(view, zone.mask, zone.mask.left, zone.mask.top);
        const window = { ...around, left: around.left - frame.left, top: around.top - frame.top };
        return { ...zone, mask: redrawMask(zone.mask, toRaster, window) };
      }),
    },
  };
}

function placedPot(pot: Pot, place: (point: PointPx) => PointPx): Pot {
  const [left, right] = [place(pot.rimLeftPx), place(pot.rimRightPx)];
  const middle: PointPx = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2];
  const half = Math.hypot(right[0] - left[0], right[1] - left[1]) / 2;
  return {
    ...pot,
    rimLeftPx: [middle[0] - half, middle[1]],
    rimRightPx: [middle[0] + half, middle[1]],
    rim: { ...pot.rim, centrePx: place(pot.rim.centrePx) },
  };
}
