import type { OpenCvDoor } from '../../../core/opencv/door.ts';
import { grabCut } from '../../../core/opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../../../core/raster/lab.ts';
import type { Mask, Raster } from '../../../core/raster/raster.ts';

/** Width of the border that is taken for backdrop, share of the shorter side. */
const BORDER = 0.04;
/** Squared Mahalanobis distances: 95 % and 99.99 % of a two-dimensional normal lie within (chi-square tables). */
const LIKELY_BACKDROP = 5.99;
const HARDLY_BACKDROP = 18.42;
/** Least spread of the backdrop's colours, L*a*b* units: a flat backdrop still has the camera's noise. */
const LEAST_SPREAD = 1.5;
const ROUNDS = 5;
/** OpenCV's marks. */
const [OUTSIDE, PROBABLY_OUTSIDE, PROBABLY_INSIDE] = [0, 2, 3];

/**
 * The backdrop's colours as one normal distribution of a* and b*, learned from the photo's border; what is hardly
 * backdrop starts GrabCut as the object. Lightness is left out, as the backdrop has the plant's soft shadow on it;
 * so black, grey and white pots go with the backdrop, and coloured ones with the plant.
 *
 * Reference: Rother, Kolmogorov and Blake (2004), "GrabCut": interactive foreground extraction using iterated graph
 * cuts, ACM Trans. Graphics 23(3), 309–314. The distance: Mahalanobis (1936), On the generalised distance in statistics.
 */
export function cutByBackdropAndGrabCut(raster: Raster, door: OpenCvDoor): Mask {
  const { width, height } = raster;
  const picture = labOfRaster(raster);
  const border = Math.max(2, Math.round(BORDER * Math.min(width, height)));
  const atBorder = (i: number) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    return x < border || y < border || x >= width - border || y >= height - border;
  };
  const distance = squaredDistance(picture, atBorder);
  const start = Uint8Array.from({ length: width * height }, (_, i) => {
    const far = distance(i);
    if (far > HARDLY_BACKDROP) return PROBABLY_INSIDE;
    return far < LIKELY_BACKDROP && atBorder(i) ? OUTSIDE : PROBABLY_OUTSIDE;
  });
  if (!start.includes(PROBABLY_INSIDE) || start.every((mark) => mark === PROBABLY_INSIDE)) {
    return { width, height, data: start.map((mark) => mark & 1) };
  }
  return { width, height, data: grabCut(door, raster, start, ROUNDS).map((mark) => mark & 1) };
}

/** Squared Mahalanobis distance of a pixel's a* and b* from those of the pixels that `counts` says. */
function squaredDistance({ a, b }: LabPicture, counts: (i: number) => boolean): (i: number) => number {
  let [n, meanA, meanB] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    if (!counts(i)) continue;
    n++;
    meanA += a[i] as number;
    meanB += b[i] as number;
  }
  [meanA, meanB] = [meanA / n, meanB / n];
  let [aa, bb, ab] = [LEAST_SPREAD ** 2, LEAST_SPREAD ** 2, 0];
  for (let i = 0; i < a.length; i++) {
    if (!counts(i)) continue;
    const [x, y] = [(a[i] as number) - meanA, (b[i] as number) - meanB];
    aa += (x * x) / n;
    bb += (y * y) / n;
    ab += (x * y) / n;
  }
  return (i) => {
    const [x, y] = [(a[i] as number) - meanA, (b[i] as number) - meanB];
    return (x * x * bb + y * y * aa - 2 * x * y * ab) / (aa * bb - ab * ab);
  };
}
