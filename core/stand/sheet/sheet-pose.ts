import type { Homography } from '../frame/frame-fit.ts';
import { leastSquares } from './least-squares.ts';
import type { PaperPair } from './paper-map.ts';
import type { SheetGeometry } from './sheet-geometry.ts';
import type { Point3 } from './sheet-reading.ts';
import { axesOfTurn, turnOfAxes } from './turn-vector.ts';
import { cross, dot, length, minus, plus, times, unit } from './vector3.ts';

/** The sheet before a pinhole camera whose axis goes through the picture's middle. */
export interface PosedSheet {
  /** Paper mm to photo px as this pose and a pinhole make it. */
  readonly paperToPhoto: Homography;
  readonly focalLengthPx: number;
  /** One standard deviation as a share. */
  readonly focalDoubt: number;
  readonly middleMm: Point3;
  /** Unit normal towards the camera. */
  readonly normal: Point3;
  readonly tiltDeg: number;
  readonly distanceDoubtMm: number;
  /** Depth of the sheet's middle ÷ focal length, and one standard deviation. */
  readonly mmPerPx: number;
  readonly mmPerPxDoubt: number;
}

/**
 * What is expected of an unknown focal length: about the picture's longer side, within a factor of 1.6 either way (one
 * standard deviation). Phone cameras lie near 0.75 of it, longer lenses at 1.5 to 2.
 */
const EXPECTED_FOCAL = { ofLongerSide: 1, logDoubt: 0.5 };

/** A focal length told by the camera is rounded to whole millimetres and moves with the focus: one standard deviation. */
export const GIVEN_FOCAL_DOUBT = 0.03;

/** The lens bends straight lines, so no mark's place is known better than this, px. */
const LEAST_DOUBT_PX = 0.05;

/**
 * Finds how the sheet stands before the camera, from four marks or more.
 *
 * @param pairs marks on paper and in the photo
 * @param map the map that they make: where to begin
 * @param focalLengthPx focal length, px, good to about 3 %; `null` when unknown. It is fitted along, held
 *   by what was given or by what is usual
 * @returns `null` when no pose fits
 *
 * Notes: seven numbers (turn, place, focal length) by least squares of the distances in the photo, begun from the map's own columns
 * (Zhang 2000, A flexible new technique for camera calibration) and from its mirror tilt, as a far plane looks alike
 * tilted either way. Depth ÷ focal length is known well even where each of them is not.
 */
export function poseSheet(
  pairs: readonly PaperPair[],
  map: Homography,
  geometry: Pick<SheetGeometry, 'widthMm' | 'heightMm'>,
  picture: { readonly width: number; readonly height: number },
  focalLengthPx: number | null,
): PosedSheet | null {
  const longerPx = Math.max(picture.width, picture.height);
  const expected = Math.log(focalLengthPx ?? EXPECTED_FOCAL.ofLongerSide * longerPx);
  const camera: Camera = { cx: picture.width / 2, cy: picture.height / 2 };
  const middle = [geometry.widthMm / 2, geometry.heightMm / 2] as const;
  const scene = { pairs, camera, middle };
  const focalDoubt = focalLengthPx === null ? EXPECTED_FOCAL.logDoubt : GIVEN_FOCAL_DOUBT;
  const residuals = (values: readonly number[]) => [
    ...missesOf(scene, values),
    ((values[6] as number) - expected) / focalDoubt,
  ];
  const starts = startsFrom(map, scene, Math.exp(expected));
  const steps = [1e-5, 1e-5, 1e-5, 1e-2, 1e-2, 1e-2, 1e-5];
  const fits = starts
    .map((start) => leastSquares(residuals, [...start, expected], steps))
    .filter(({ values }) => (values[5] as number) > 0)
    .sort((one, other) => one.sumOfSquares - other.sumOfSquares);
  const best = fits[0];
  if (best === undefined || best.covariance === null) return null;
  // Marks that miss by more than their doubts say make all else doubtful in the same measure.
  const freedom = 2 * pairs.length - 6;
  const strain = Math.max(1, best.sumOfSquares / freedom);
  return posed(
    best.values,
    best.covariance.map((row) => row.map((value) => value * strain)),
    scene,
  );
}

interface Camera {
  readonly cx: number;
  readonly cy: number;
}

interface Scene {
  readonly pairs: readonly PaperPair[];
  readonly camera: Camera;
  readonly middle: readonly [number, number];
}

/** `values`: turn vector (3), place of the sheet's middle, mm (3), logarithm of the focal length. */
function missesOf({ pairs, camera, middle }: Scene, values: readonly number[]): number[] {
  const [r1, r2] = axesOfTurn(values);
  const [tx = 0, ty = 0, tz = 0] = values.slice(3, 6);
  const focal = Math.exp(values[6] as number);
  return pairs.flatMap(({ mm, px, doubtPx }) => {
    const [x, y] = [mm[0] - middle[0], mm[1] - middle[1]];
    const depth = r1[2] * x + r2[2] * y + tz;
    const doubt = Math.hypot(doubtPx, LEAST_DOUBT_PX);
    return [
      ((focal * (r1[0] * x + r2[0] * y + tx)) / depth + camera.cx - px[0]) / doubt,
      ((focal * (r1[1] * x + r2[1] * y + ty)) / depth + camera.cy - px[1]) / doubt,
    ];
  });
}

/** The map's columns freed of the camera are the sheet's own axes, up to a common factor. */
function startsFrom(map: Homography, { camera, middle }: Scene, focal: number): number[][] {
  const column = (k: 0 | 1 | 2): Point3 => {
    const [x, y, z] = [map[k], map[(k + 3) as 3 | 4 | 5], map[(k + 6) as 6 | 7 | 8]];
    return [(x - camera.cx * z) / focal, (y - camera.cy * z) / focal, z];
  };
  const [right, down, corner] = [column(0), column(1), column(2)];
  const size = (length(right) + length(down)) / 2;
  const r1 = unit(right);
  const r2 = unit(minus(down, times(r1, dot(r1, down))));
  const place = times(plus(plus(corner, times(right, middle[0])), times(down, middle[1])), 1 / size);
  const towards = unit(place);
  // The mirror tilt: each axis' share along the line of sight changes its sign.
  const mirrored = (v: Point3): Point3 => minus(v, times(towards, 2 * dot(v, towards)));
  const m1 = mirrored(r1);
  const m2 = mirrored(r2);
  return [
    [...turnOfAxes(r1, r2), ...place],
    [...turnOfAxes(m1, m2), ...place],
  ];
}

function posed(
  values: readonly number[],
  covariance: readonly (readonly number[])[],
  { camera: { cx, cy }, middle }: Scene,
): PosedSheet {
  const [r1, r2] = axesOfTurn(values);
  const [x = 0, y = 0, depth = 0] = values.slice(3, 6);
  const focal = Math.exp(values[6] as number);
  const variance = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  // mm a px is depth ÷ focal length: its log's variance takes the two together.
  const share = variance(5, 5) / depth ** 2 + variance(6, 6) - (2 * variance(5, 6)) / depth;
  const facing = times(cross(r1, r2), -1);
  const corner = minus(minus([x, y, depth], times(r1, middle[0])), times(r2, middle[1]));
  const seen = ([right, down, away]: Point3): Point3 => [
    focal * right + cx * away,
    focal * down + cy * away,
    away,
  ];
  const [a, b, c] = [seen(r1), seen(r2), seen(corner)].map((column) => times(column, 1 / corner[2])) as [
    Point3,
    Point3,
    Point3,
  ];
  return {
    paperToPhoto: [a[0], b[0], c[0], a[1], b[1], c[1], a[2], b[2], c[2]],
    focalLengthPx: focal,
    focalDoubt: Math.sqrt(variance(6, 6)),
    middleMm: [x, y, depth],
    normal: facing,
    tiltDeg: (Math.acos(Math.min(1, Math.abs(facing[2]))) * 180) / Math.PI,
    distanceDoubtMm: Math.sqrt(variance(5, 5)),
    mmPerPx: depth / focal,
    mmPerPxDoubt: (Math.sqrt(Math.max(0, share)) * depth) / focal,
  };
}
