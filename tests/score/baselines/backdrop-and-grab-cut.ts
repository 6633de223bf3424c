import type { OpenCvDoor } from '../../../core/opencv/door.ts';
import { grabCut } from '../../../core/opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../../../core/raster/lab.ts';
import type { Mask, Raster } from '../../../core/raster/raster.ts';

/** Width of the border that is taken for backdrop, share of the shorter side. */
const BORDER = 0.04;
/** Squared Mahalanobis distances: 95 % and 99.99 % of a three-dimensional normal lie within (chi-square tables). */
const LIKELY_BACKDROP = 7.81;
const HARDLY_BACKDROP = 21.1;
/** Least spread of the backdrop's colours, L*a*b* units: a flat backdrop still has the camera's noise. */
const LEAST_SPREAD = 1.5;
const ROUNDS = 5;
/** OpenCV's marks. */
const [OUTSIDE, PROBABLY_OUTSIDE, PROBABLY_INSIDE] = [0, 2, 3];

/**
 * The backdrop's colours as one normal distribution in L*a*b*, learned from the photo's border; what is hardly
 * backdrop starts GrabCut as the object. The usual recipe for a studio photo; pot and plant come out as one.
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

/** Squared Mahalanobis distance of a pixel from the colours of the pixels that `counts` says. */
function squaredDistance({ l, a, b }: LabPicture, counts: (i: number) => boolean): (i: number) => number {
  let [n, meanL, meanA, meanB] = [0, 0, 0, 0];
  for (let i = 0; i < l.length; i++) {
    if (!counts(i)) continue;
    n++;
    meanL += l[i] as number;
    meanA += a[i] as number;
    meanB += b[i] as number;
  }
  [meanL, meanA, meanB] = [meanL / n, meanA / n, meanB / n];
  const off = (i: number) =>
    [(l[i] as number) - meanL, (a[i] as number) - meanA, (b[i] as number) - meanB] as const;
  let [ll, aa, bb, la, lb, ab] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < l.length; i++) {
    if (!counts(i)) continue;
    const [x, y, z] = off(i);
    ll += (x * x) / n;
    aa += (y * y) / n;
    bb += (z * z) / n;
    la += (x * y) / n;
    lb += (x * z) / n;
    ab += (y * z) / n;
  }
  const least = LEAST_SPREAD ** 2;
  [ll, aa, bb] = [ll + least, aa + least, bb + least];
  // The inverse of the symmetric covariance, by cofactors.
  const [c0, c1, c2] = [aa * bb - ab * ab, lb * ab - la * bb, la * ab - lb * aa];
  const [c4, c5, c8] = [ll * bb - lb * lb, la * lb - ll * ab, ll * aa - la * la];
  const determinant = ll * c0 + la * c1 + lb * c2;
  return (i) => {
    const [x, y, z] = off(i);
    return (x * x * c0 + y * y * c4 + z * z * c8 + 2 * (x * y * c1 + x * z * c2 + y * z * c5)) / determinant;
  };
}
