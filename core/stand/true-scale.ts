import { requirePositive } from '../errors/expect.ts';

/**
 * By how much a round thing's outline reads larger than its own radius, seen from near: 1 ÷ √(1 − (R ÷ D)²). Holds for a
 * ball and, level, for a pot's rim.
 *
 * @param radiusMm true radius R, above 0
 * @param distanceMm camera to its middle D, above R
 *
 * Example: 150 mm at 1000 mm reads 1.011443 times as large.
 */
export function outlineFactor(radiusMm: number, distanceMm: number): number {
  requirePositive(radiusMm, 'radiusMm');
  requirePositive(distanceMm - radiusMm, 'distanceMm less radiusMm');
  return 1 / Math.sqrt(1 - (radiusMm / distanceMm) ** 2);
}

/**
 * True radius of a ball from the radius that its outline reads at its middle's scale: the inverse of `outlineFactor`,
 * ρ ÷ √(1 + (ρ ÷ D)²).
 *
 * Example: an outline of 151.716 mm at 1000 mm is a ball of 150 mm.
 */
export function ballRadiusMm(outlineRadiusMm: number, distanceMm: number): number {
  requirePositive(outlineRadiusMm, 'outlineRadiusMm');
  requirePositive(distanceMm, 'distanceMm');
  return outlineRadiusMm / Math.sqrt(1 + (outlineRadiusMm / distanceMm) ** 2);
}

/** The ellipse that a ball makes in a photo, px. */
export interface BallOutline {
  /** Half axis towards the picture's middle. */
  readonly radialPx: number;
  /** Half axis across it. */
  readonly acrossPx: number;
}

/**
 * How a ball reads beside the picture's middle: an ellipse that is longer towards the middle.
 *
 * With α = asin(R ÷ D) and θ the angle between the ball's middle and the camera's axis, the half axes are
 * f sin α cos α ÷ (cos²θ − sin²α) and f sin α ÷ √(cos²θ − sin²α).
 *
 * @param radiusMm R, above 0
 * @param distanceMm camera to the ball's middle D, above R
 * @param offAxisRad θ, 0 or more, less than a right angle less α
 * @param focalLengthPx f, above 0
 *
 * Example: f 1000, R 200, D 1500, 10°: 138.7955 and 136.6484 px: a perfect ball looks 1.6 % oval.
 */
export function ballOutline(
  { radiusMm, distanceMm }: { readonly radiusMm: number; readonly distanceMm: number },
  offAxisRad: number,
  focalLengthPx: number,
): BallOutline {
  requirePositive(radiusMm, 'radiusMm');
  requirePositive(distanceMm - radiusMm, 'distanceMm less radiusMm');
  const sine = radiusMm / distanceMm;
  const left = Math.cos(offAxisRad) ** 2 - sine ** 2;
  requirePositive(left, 'cos² of offAxisRad less (radiusMm ÷ distanceMm)²');
  const cosine = Math.sqrt(1 - sine ** 2);
  return {
    radialPx: (focalLengthPx * sine * cosine) / left,
    acrossPx: (focalLengthPx * sine) / Math.sqrt(left),
  };
}
