import { nestedContours } from '../../opencv/contours.ts';
import type { OpenCvDoor } from '../../opencv/door.ts';
import { blurPlane, shrinkRaster } from '../../opencv/pictures.ts';
import type { Raster } from '../../raster/raster.ts';
import { type Ellipse, ellipseAxes, ellipseOfOutline, strayFromEllipse } from './ellipse-of-outline.ts';

/** Each halving of the picture finds marks twice as large; three reach from 14 px to about 250 px across. */
const HALVINGS = 3;

/** Windows for the local mean, px: the small one keeps close rings apart, the large one fills broad ones. */
const WINDOWS_PX = [9, 15, 31] as const;

/** How much darker than the local mean a ring must be, display steps, and the smoothing that keeps noise under it. */
const BELOW = 3;
const SMOOTH_PX = 0.8;

const LEAST_POINTS = 8;

/** Bounds on what may be a ring: how oblong, how far from an ellipse, how far off the ring around it. */
const MOST_OBLONG = 2.2;
const MOST_STRAY = 0.14;
const MOST_APART = 0.2;

/** Fewest outlines about one another: middle, light ring, dark ring. */
const LEAST_NESTED = 3;

/**
 * Where ring marks may be: ellipses about one another, three or more. Px of the
 * raster; one mark is found several times over.
 */
export function ringSeeds(door: OpenCvDoor, raster: Raster): Ellipse[] {
  const seeds: Ellipse[] = [];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const longerPx = Math.round(Math.max(raster.width, raster.height) / 2 ** halving);
    if (longerPx < 150) break;
    const small = shrinkRaster(door, raster, longerPx);
    const grey = smoothGrey(door, small);
    for (const windowPx of WINDOWS_PX) {
      const contours = nestedContours(door, grey, {
        windowPx,
        below: BELOW,
        leastPoints: LEAST_POINTS,
        leastNested: LEAST_NESTED,
      });
      for (const seed of outermostOfNests(contours)) seeds.push(enlarged(seed, raster.width / small.width));
    }
  }
  return seeds;
}

type Contours = ReturnType<typeof nestedContours>;

/**
 * Every outline with enough others nested about its middle; the kinds differ in their number, so which of them is the
 * outermost is left to the fit.
 */
function outermostOfNests(contours: Contours): Ellipse[] {
  const ellipses = contours.map(({ points }) => ringLike(points));
  const depths = new Uint8Array(contours.length);
  // Parents are listed before their children: the walk backwards counts from the inside out.
  for (let k = contours.length - 1; k >= 0; k--) {
    const ellipse = ellipses[k] ?? null;
    if (ellipse === null) continue;
    depths[k] = Math.max(depths[k] as number, 1);
    const parent = contours[k]?.parent ?? -1;
    const around = ellipses[parent] ?? null;
    if (around !== null && isAbout(around, ellipse)) {
      depths[parent] = Math.max(depths[parent] as number, (depths[k] as number) + 1);
    }
  }
  return ellipses.filter(
    (ellipse, k): ellipse is Ellipse => ellipse !== null && (depths[k] as number) >= LEAST_NESTED,
  );
}

function ringLike(points: Int32Array): Ellipse | null {
  if (points.length === 0) return null;
  const ellipse = ellipseOfOutline(points);
  if (ellipse === null) return null;
  const { longer, shorter } = ellipseAxes(ellipse.shape);
  if (!(shorter >= 0.8 && longer / shorter <= MOST_OBLONG)) return null;
  // A small outline strays by its pixels' corners alone.
  return strayFromEllipse(points, ellipse) <= MOST_STRAY + 0.25 / shorter ? ellipse : null;
}

function isAbout(outer: Ellipse, inner: Ellipse): boolean {
  const apart = Math.hypot(outer.centrePx[0] - inner.centrePx[0], outer.centrePx[1] - inner.centrePx[1]);
  const { longer } = ellipseAxes(outer.shape);
  return apart <= MOST_APART * longer + 0.5 && ellipseAxes(inner.shape).longer < longer;
}

function enlarged({ centrePx: [x, y], shape: [xx, xy, yy] }: Ellipse, factor: number): Ellipse {
  return {
    centrePx: [(x + 0.5) * factor, (y + 0.5) * factor],
    shape: [xx * factor, xy * factor, yy * factor],
  };
}

/** Luma in display steps, slightly smoothed: contours are wanted where the eye sees them, in shade as in light. */
function smoothGrey(door: OpenCvDoor, { data, width, height }: Raster) {
  const luma = new Float32Array(width * height);
  for (let i = 0; i < luma.length; i++) {
    const [red = 0, green = 0, blue = 0] = [data[3 * i], data[3 * i + 1], data[3 * i + 2]];
    luma[i] = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }
  return { width, height, data: Uint8Array.from(blurPlane(door, luma, { width, height }, SMOOTH_PX)) };
}
