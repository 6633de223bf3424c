import type { OpenCvDoor } from '../../opencv/door.ts';
import type { GreyPicture } from '../../opencv/grey-pictures.ts';
import { meanPlane } from '../../opencv/pictures.ts';
import type { Raster } from '../../raster/raster.ts';

/** Half the side of the square over which lightness is evened out, share of the longer side. */
const EVEN_SHARE = 0.01;
/** Contrast that is left as it is, levels of 255: weaker contrast is noise and must not be blown up to detail. */
const NOISE_LEVELS = 3;
/** Levels that one local standard deviation becomes, about the middle grey. */
const STEP_LEVELS = 60;

/**
 * What is seen of a picture whatever the light: lightness less its local mean, over its local spread. A lamp that moved,
 * a passing cloud or another exposure leave it nearly as it was.
 *
 * @returns a grey picture of the raster's size, 128 where nothing is to be seen
 *
 * Notes: a surface whose grain is below about 9 levels of 255 stays near 128; a plain cloth therefore has no detail.
 */
export function detailPicture(door: OpenCvDoor, raster: Raster): GreyPicture {
  const { width, height, data } = raster;
  const light = new Float32Array(width * height);
  for (let i = 0, at = 0; i < light.length; i++, at += 3) {
    light[i] =
      0.299 * (data[at] as number) + 0.587 * (data[at + 1] as number) + 0.114 * (data[at + 2] as number);
  }
  const radiusPx = Math.max(3, EVEN_SHARE * Math.max(width, height));
  const mean = meanPlane(door, light, raster, radiusPx);
  const above = light.map((value, i) => value - (mean[i] as number));
  const squares = meanPlane(
    door,
    above.map((value) => value * value),
    raster,
    radiusPx,
  );
  const detail = new Uint8Array(width * height);
  for (let i = 0; i < detail.length; i++) {
    const spread = Math.sqrt(squares[i] as number) + NOISE_LEVELS;
    const level = 128 + (STEP_LEVELS * (above[i] as number)) / spread;
    detail[i] = Math.max(0, Math.min(255, Math.round(level)));
  }
  return { width, height, data: detail };
}
