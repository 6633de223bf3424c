import type { OpenCvDoor } from '../opencv/door.ts';
import { meanPlane } from '../opencv/pictures.ts';
import type { LabPicture } from '../raster/lab.ts';
import { type Backdrop, deltaAt } from './backdrop-model.ts';

/** Reach of the local correction, share of the longer side. */
const REACH_SHARE = 0.06;
/** ΔE below which a pixel may teach the backdrop. */
const TEACHING_DELTA = 5;

/**
 * Lets the fitted backdrop follow what a quadratic cannot: the line between wall and table, a vignette, a fold.
 *
 * Pixels already close to the model teach the difference, averaged over a neighbourhood; where none is near
 * (behind the plant) the difference fades to nothing and the fitted surface stands.
 */
export function followBackdrop(door: OpenCvDoor, picture: LabPicture, backdrop: Backdrop): Backdrop {
  const { width, height } = picture;
  const radius = Math.max(3, Math.round(REACH_SHARE * Math.max(width, height)));
  const limit = TEACHING_DELTA + 2 * backdrop.spread;
  const teaches = new Float32Array(width * height);
  for (let i = 0; i < teaches.length; i++) teaches[i] = deltaAt(picture, backdrop.colour, i) < limit ? 1 : 0;
  const teachers = meanPlane(door, teaches, picture, radius);
  const followed = (['l', 'a', 'b'] as const).map((channel) => {
    const seen = picture[channel];
    const model = backdrop.colour[channel];
    const difference = new Float32Array(seen.length);
    for (let i = 0; i < seen.length; i++) {
      difference[i] = (teaches[i] as number) * ((seen[i] as number) - (model[i] as number));
    }
    const mean = meanPlane(door, difference, picture, radius);
    // A weak pull to zero (0.1) decides where few pixels teach.
    const followed = new Float32Array(model.length);
    for (let i = 0; i < followed.length; i++) {
      followed[i] = (model[i] as number) + (mean[i] as number) / ((teachers[i] as number) + 0.1);
    }
    return followed;
  }) as [Float32Array, Float32Array, Float32Array];
  const [l, a, b] = followed;
  return { ...backdrop, colour: { width, height, l, a, b } };
}
