import type { ZoneMask } from '../canopy/found-plant.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import type { UprightView } from './upright-view.ts';

/** A window of a picture, whole px. */
export interface PictureWindow {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The whole px that a window of the raster covers in the upright view. */
export function boundsInView(
  view: Pick<UprightView, 'toUpright'>,
  { width, height }: Mask,
  left = 0,
  top = 0,
): PictureWindow {
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

/** Draws a mask anew: a pixel is inside when half of it is covered, straight-line between the old pixels. */
export function redrawMask(
  mask: ZoneMask,
  toRaster: (point: PointPx) => PointPx,
  window: PictureWindow,
): ZoneMask {
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
function coverage(mask: Mask, x: number, y: number): number {
  const column = Math.floor(x);
  const row = Math.floor(y);
  if (column < -1 || row < -1 || column >= mask.width || row >= mask.height) return 0;
  const across = x - column;
  const down = y - row;
  const upper = insideAt(mask, column, row) * (1 - across) + insideAt(mask, column + 1, row) * across;
  const lower = insideAt(mask, column, row + 1) * (1 - across) + insideAt(mask, column + 1, row + 1) * across;
  return upper * (1 - down) + lower * down;
}

function insideAt({ width, height, data }: Mask, column: number, row: number): number {
  if (column < 0 || row < 0 || column >= width || row >= height) return 0;
  return data[row * width + column] as number;
}
