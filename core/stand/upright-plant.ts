import type { FoundPlant, Pot, ZoneMask } from '../canopy/found-plant.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
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
  const frame = boundsOf(view, canopy);
  const place = (point: PointPx): PointPx => {
    const [x, y] = view.toUpright(point);
    return [x - frame.left, y - frame.top];
  };
  const toRaster = ([x, y]: PointPx) => view.toRaster([x + frame.left, y + frame.top]);
  return {
    toRaster,
    plant: {
      ...found,
      canopy: redrawn({ ...canopy, left: 0, top: 0 }, toRaster, { ...frame, left: 0, top: 0 }),
      pot: pot === null ? null : placedPot(pot, place),
      unsureZones: unsureZones.map((zone) => {
        const around = boundsOf(view, zone.mask, zone.mask.left, zone.mask.top);
        const window = { ...around, left: around.left - frame.left, top: around.top - frame.top };
        return { ...zone, mask: redrawn(zone.mask, toRaster, window) };
      }),
    },
  };
}

interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The whole px that a window of the raster covers in the upright view. */
function boundsOf(view: UprightView, { width, height }: Mask, left = 0, top = 0): Window {
  // Edges bend, if at all, outwards between the corners by less than a px; one px each way is left over.
  const places = [0, 0.5, 1].flatMap((across) =>
    [0, 0.5, 1].map((down) => view.toUpright([left + across * width, top + down * height])),
  );
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [fromX, fromY] = [Math.floor(Math.min(...xs)) - 1, Math.floor(Math.min(...ys)) - 1];
  return {
    left: fromX,
    top: fromY,
    width: Math.ceil(Math.max(...xs)) + 1 - fromX,
    height: Math.ceil(Math.max(...ys)) + 1 - fromY,
  };
}

function redrawn(mask: ZoneMask, toRaster: (point: PointPx) => PointPx, window: Window): ZoneMask {
  const { left, top, width, height } = window;
  const data = new Uint8Array(width * height);
  for (let row = 0, i = 0; row < height; row++) {
    for (let column = 0; column < width; column++, i++) {
      const [x, y] = toRaster([left + column + 0.5, top + row + 0.5]);
      data[i] = coverage(mask, x - mask.left - 0.5, y - mask.top - 0.5) >= 0.5 ? 1 : 0;
    }
  }
  return { left, top, width, height, data };
}

/** Straight-line between the middles of the four pixels around; outside the mask nothing is covered. */
function coverage({ width, height, data }: Mask, x: number, y: number): number {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  if (column < -1 || row < -1 || column >= width || row >= height) return 0;
  const at = (c: number, r: number) =>
    c < 0 || r < 0 || c >= width || r >= height ? 0 : (data[r * width + c] as number);
  const [across, down] = [x - column, y - row];
  const upper = at(column, row) * (1 - across) + at(column + 1, row) * across;
  const lower = at(column, row + 1) * (1 - across) + at(column + 1, row + 1) * across;
  return upper * (1 - down) + lower * down;
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
