import { requireAtLeast, requirePositive } from '../errors/expect.ts';

/** A scale at the plant's axis, in mm per px, with one standard deviation. */
export interface TrueScale {
  readonly mmPerPx: number;
  readonly doubtMmPerPx: number;
  readonly from: 'rim' | 'sheet';
}

/** What the sheet's scale is carried to the plant by. Lengths in mm. */
export interface SheetClues {
  /** At the sheet's middle. */
  readonly mmPerPxAtSheet: number;
  /** One standard deviation of it. */
  readonly mmPerPxDoubt: number;
  /** How far the pot's axis stands in front of the sheet, 0 or more. */
  readonly plantInFrontMm: number;
  /** Camera to sheet; `null` when unknown. */
  readonly sheetDistanceMm: number | null;
  /** Camera to the plant's axis; `null` when unknown. */
  readonly cameraDistanceMm: number | null;
  /** Px; `null` when unknown. */
  readonly focalLengthPx: number | null;
}

/** Standard deviations of what a tape tells, mm. */
const TAPE_DOUBT_MM = 10;

/**
 * The scale at the plant's axis from the stand sheet behind it.
 *
 * With Z the camera's distance from the sheet and d the plant's from it, what stands at the plant reads large by
 * Z ÷ (Z − d), so mm per px there are those at the sheet times (Z − d) ÷ Z.
 *
 * @returns `null` when the plant stands in front of the sheet and nothing tells how far the camera is: then the factor may be
 *   anything from 0.8 to 1
 *
 * Notes: Z is taken from the grower's own distance to the plant (plus d), else from the sheet's reading, else from the
 * focal length. d is taken to be good to 10 mm.
 *
 * Reference: pinhole projection, Hartley, Zisserman (2004), Multiple View Geometry, chapter 6.
 *
 * Example: 0.5 mm a px at a sheet 1500 mm away and a plant 100 mm before it give 0.4667 (7.14 % less than at the sheet reads).
 */
export function scaleFromSheet(clues: SheetClues): TrueScale | null {
  const { mmPerPxAtSheet, mmPerPxDoubt, plantInFrontMm: inFront } = clues;
  requirePositive(mmPerPxAtSheet, 'mmPerPxAtSheet');
  requireAtLeast(inFront, 0, 'plantInFrontMm');
  const relative = mmPerPxDoubt / mmPerPxAtSheet;
  if (inFront === 0) {
    return { mmPerPx: mmPerPxAtSheet, doubtMmPerPx: mmPerPxDoubt, from: 'sheet' };
  }
  const sheetDistanceMm = sheetDistance(clues);
  if (sheetDistanceMm === null || !(sheetDistanceMm > inFront)) return null;
  const mmPerPx = mmPerPxAtSheet * (1 - inFront / sheetDistanceMm);
  const inFrontDoubt = TAPE_DOUBT_MM / (sheetDistanceMm - inFront);
  return { mmPerPx, doubtMmPerPx: mmPerPx * Math.hypot(relative, inFrontDoubt), from: 'sheet' };
}

function sheetDistance(clues: SheetClues): number | null {
  if (clues.cameraDistanceMm !== null) return clues.cameraDistanceMm + clues.plantInFrontMm;
  if (clues.sheetDistanceMm !== null) return clues.sheetDistanceMm;
  return clues.focalLengthPx === null ? null : clues.focalLengthPx * clues.mmPerPxAtSheet;
}

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
