import type { LabPicture } from '../raster/lab.ts';
import { type Backdrop, deltaAt } from './backdrop-model.ts';

/** Strip at either side that teaches, share of the width. */
const STRIP_SHARE = 0.04;
/** A row differing by more than this from the model is taken for a leaf or a thing reaching in, ΔE. */
const MOST_DELTA = 25;

/**
 * Corrects a fitted backdrop row by row with what the strips at its left and right edge show: a soft horizon between
 * wall and floor, a table's front edge, planks. Between the strips the correction runs straight from one to the other;
 * a row in which one strip shows something else entirely uses the other strip.
 */
export function followSides(picture: LabPicture, backdrop: Backdrop): Backdrop {
  const { width, height } = picture;
  const strip = Math.max(3, Math.round(STRIP_SHARE * width));
  const model = backdrop.colour;
  const left = rowDifferences(picture, model, 0, strip);
  const right = rowDifferences(picture, model, width - strip, width);
  const [l, a, b] = [model.l.slice(), model.a.slice(), model.b.slice()];
  const planes = [l, a, b];
  for (let y = 0; y < height; y++) {
    const [one, other] = [left[y] ?? right[y], right[y] ?? left[y]];
    if (!one || !other) continue;
    planes.forEach((plane, channel) => {
      const from = one[channel] as number;
      const slope = ((other[channel] as number) - from) / width;
      for (let x = 0, i = y * width; x < width; x++, i++) plane[i] = (plane[i] as number) + from + slope * x;
    });
  }
  const colour = { width, height, l, a, b };
  return { ...backdrop, colour, plainShare: explainedShare(picture, colour, strip) };
}

/** ΔE beyond which a pixel counts as not explained. */
const EXPLAINED_DELTA = 7;

/** Share of the border explained, judged on pixels that did not teach: top, bottom, and just inside either strip. */
function explainedShare(picture: LabPicture, colour: LabPicture, strip: number): number {
  const { width, height } = picture;
  let [judged, explained] = [0, 0];
  for (let y = 0; y < height; y++) {
    const across = y < strip || y >= height - strip;
    for (let x = strip; x < width - strip; x++) {
      if (!across && x === 2 * strip) x = width - 2 * strip;
      judged++;
      if (deltaAt(picture, colour, y * width + x) < EXPLAINED_DELTA) explained++;
    }
  }
  return explained / judged;
}

type Difference = readonly [l: number, a: number, b: number];

/** Median difference from the model in each row of a strip; `null` where it is too large to be backdrop. */
function rowDifferences(
  picture: LabPicture,
  model: LabPicture,
  from: number,
  to: number,
): (Difference | null)[] {
  const values = new Float64Array(to - from);
  return Array.from({ length: picture.height }, (_, y) => {
    const difference = (['l', 'a', 'b'] as const).map((channel) => {
      const start = y * picture.width + from;
      for (let k = 0; k < values.length; k++) {
        values[k] = (picture[channel][start + k] as number) - (model[channel][start + k] as number);
      }
      return values.sort()[values.length >> 1] as number;
    }) as unknown as Difference;
    return Math.hypot(...difference) > MOST_DELTA ? null : difference;
  });
}
