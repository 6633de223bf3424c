import type { ZoneMask } from '../canopy/found-plant.ts';
import type { Mask } from '../raster/raster.ts';
import type { Homography } from '../stand/frame/frame-fit.ts';
import type { PictureWindow } from '../stand/redraw-mask.ts';

/**
 * Draws a mask anew in another view: a pixel is inside when half of it is covered, straight-line between the old pixels.
 *
 * @param mask px of the photo
 * @param fromView px of the view to px of the photo
 * @param window what is drawn of the view
 *
 * Notes: the same as `redrawMask`, for a homography, along whose rows the place moves evenly but for one division: a
 * sitting has up to eight masks of a million pixels.
 */
export function maskInView(
  { left: maskLeft, top: maskTop, width: maskWidth, height: maskHeight, data: old }: ZoneMask,
  fromView: Homography,
  { left, top, width, height }: PictureWindow,
): Mask {
  const [a, b, c, d, e, f, g, h, i] = fromView;
  const data = new Uint8Array(width * height);
  const at = (column: number, row: number) =>
    column < 0 || row < 0 || column >= maskWidth || row >= maskHeight
      ? 0
      : (old[row * maskWidth + column] as number);
  for (let row = 0, place = 0; row < height; row++) {
    const y = top + row + 0.5;
    const [acrossY, downY, depthY] = [b * y + c, e * y + f, h * y + i];
    for (let column = 0; column < width; column++, place++) {
      const x = left + column + 0.5;
      const depth = g * x + depthY;
      const across = (a * x + acrossY) / depth - 0.5 - maskLeft;
      const down = (d * x + downY) / depth - 0.5 - maskTop;
      if (!(across > -1 && down > -1 && across < maskWidth && down < maskHeight)) continue;
      const near = Math.floor(across);
      const upper = Math.floor(down);
      const one = at(near, upper);
      const two = at(near + 1, upper);
      const three = at(near, upper + 1);
      const four = at(near + 1, upper + 1);
      const sum = one + two + three + four;
      if (sum === 0) continue;
      if (sum < 4) {
        const [u, v] = [across - near, down - upper];
        const covered = (one * (1 - u) + two * u) * (1 - v) + (three * (1 - u) + four * u) * v;
        if (covered < 0.5) continue;
      }
      data[place] = 1;
    }
  }
  return { width, height, data };
}
