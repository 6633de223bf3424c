import { requireFinite, requirePositive } from '../../errors/expect.ts';
import type { PointPx } from '../../raster/raster.ts';
import type { SheetPlace } from '../known-stand.ts';
import { mapPoint } from './paper-map.ts';
import { sheetGeometry } from './sheet-geometry.ts';
import type { SheetPose, SheetReading } from './sheet-reading.ts';

export interface PlantBeforeSheet {
  readonly paper: 'A4' | 'Letter';
  readonly place: SheetPlace;
  /** How far the plant's axis stands before a backdrop sheet, along the sheet's normal, mm, 0 or more. */
  readonly plantInFrontMm: number;
  /** Where the plant stands in the photo: the canopy's middle before a backdrop, the pot's foot on the bench; `null` unknown. */
  readonly plantPx: PointPx | null;
  /** On the bench: how high above it the measured part stands (the canopy's middle), mm; it is nearer to a camera above it. */
  readonly aboveBenchMm: number;
  /** Camera to the plant's axis as measured by the grower, mm; used when the sheet does not tell it. `null` unknown. */
  readonly cameraDistanceMm: number | null;
}

/** Millimetres a px at the plant's axis, and one standard deviation; or why it cannot be told. */
export type ScaleAtPlant =
  | { readonly mmPerPx: number; readonly doubt: number }
  | { readonly mmPerPx: null; readonly reason: string };

/** How well growers know what they measure by hand, one standard deviation: the plant's place, mm; the camera's, share. */
const PLACE_DOUBT_MM = 8;
const HAND_DISTANCE_DOUBT = 0.03;
/** A bench sheet with no known pot place: the pot may stand this far from the sheet's middle, mm. */
const BENCH_PLACE_DOUBT_MM = 100;

/**
 * By what factor a thing reads larger than the sheet when it stands nearer: Z ÷ (Z − d).
 *
 * @param distanceMm camera to sheet, mm, above 0
 * @param nearerMm how much nearer the thing is, mm; below the distance, negative when it is farther
 *
 * Example: 100 mm before a sheet 2 m away reads 5.26 % large.
 */
export function readsLargerBy(distanceMm: number, nearerMm: number): number {
  requirePositive(distanceMm, 'distanceMm');
  requirePositive(distanceMm - nearerMm, 'distanceMm - nearerMm');
  return distanceMm / (distanceMm - nearerMm);
}

/**
 * Millimetres a px at the plant's axis from the stand sheet, perspective counted.
 *
 * Notes: what faces the camera is scaled by its depth along the camera's axis ÷ focal length. Before a backdrop the depth
 * is where the ray through the plant meets the plane `plantInFrontMm` before the sheet, on the bench where the ray through
 * the pot's foot meets the sheet's own plane. Without a focal length a backdrop sheet needs the camera's distance, and the
 * sheet is taken to face the camera.
 */
export function mmPerPxAtPlant(reading: SheetReading, plant: PlantBeforeSheet): ScaleAtPlant {
  requireFinite(plant.plantInFrontMm, 'plantInFrontMm');
  return plant.place === 'backdrop' ? beforeBackdrop(reading, plant) : onBench(reading, plant);
}

function beforeBackdrop(reading: SheetReading, plant: PlantBeforeSheet): ScaleAtPlant {
  const { plantInFrontMm: nearer, plantPx, cameraDistanceMm } = plant;
  const { pose, mmPerPxAtSheet } = reading;
  const sheetShare = reading.mmPerPxDoubt / mmPerPxAtSheet;
  if (pose === null && cameraDistanceMm === null && nearer > 0) {
    return {
      mmPerPx: null,
      reason:
        'The plant stands before the sheet and reads larger than it; say how far the camera stands from the pot to have millimetres.',
    };
  }
  if (pose === null) {
    const distance = nearer === 0 ? null : (cameraDistanceMm as number) + nearer;
    const mmPerPx = distance === null ? mmPerPxAtSheet : mmPerPxAtSheet / readsLargerBy(distance, nearer);
    const share =
      distance === null
        ? sheetShare
        : Math.hypot(sheetShare, nearnessDoubt(distance, nearer, HAND_DISTANCE_DOUBT * distance));
    return { mmPerPx, doubt: mmPerPx * share };
  }
  const depth = depthOnPlane(reading, pose, plantPx, nearer, plant.paper);
  if (!(depth > 0))
    return {
      mmPerPx: null,
      reason: 'The plant would stand behind the camera: check its distance to the sheet.',
    };
  // With few marks the tilt is unknown: across half a metre it may change the depth by this much.
  const tiltShare = pose.normal === null ? 0.02 : 0;
  const mmPerPx = depth / pose.focalLengthPx;
  const share = Math.hypot(
    sheetShare,
    tiltShare,
    nearnessDoubt(pose.distanceMm, nearer, pose.distanceDoubtMm),
  );
  return { mmPerPx, doubt: mmPerPx * share };
}

/** Doubt of (Z − d) ÷ Z as a share, from the doubts of Z and d. */
function nearnessDoubt(distance: number, nearer: number, distanceDoubt: number): number {
  const left = distance - nearer;
  return Math.hypot((nearer * distanceDoubt) / (distance * left), nearer === 0 ? 0 : PLACE_DOUBT_MM / left);
}

function onBench(reading: SheetReading, { plantPx, paper, aboveBenchMm }: PlantBeforeSheet): ScaleAtPlant {
  const { pose, paperToPhoto, mmPerPxAtSheet } = reading;
  const sheetShare = reading.mmPerPxDoubt / mmPerPxAtSheet;
  if (plantPx === null) {
    // Depth changes by no more than the whole way from the sheet's middle.
    const placeShare = pose === null ? 0.05 : BENCH_PLACE_DOUBT_MM / pose.distanceMm;
    return { mmPerPx: mmPerPxAtSheet, doubt: mmPerPxAtSheet * Math.hypot(sheetShare, placeShare) };
  }
  if (reading.fit !== 'perspective') {
    return {
      mmPerPx: null,
      reason: 'A sheet on the bench needs four rings in sight to tell the scale where the pot stands.',
    };
  }
  if (pose !== null) {
    const depth = depthOnPlane(reading, pose, plantPx, 0, paper) + aboveBenchMm * (pose.normal?.[2] ?? 0);
    if (!(depth > 0))
      return { mmPerPx: null, reason: 'The pot’s foot does not lie on the bench as the sheet shows it.' };
    return {
      mmPerPx: depth / pose.focalLengthPx,
      doubt: (depth / pose.focalLengthPx) * Math.hypot(sheetShare, 0.005),
    };
  }
  // Depth along the plane is as the map's own third row; the sheet's middle sets the scale.
  const { widthMm, heightMm } = sheetGeometry(paper);
  const foot = paperPlace(paperToPhoto, plantPx);
  const [, , , , , , g, h, i] = paperToPhoto;
  const ratio = (g * foot[0] + h * foot[1] + i) / ((g * widthMm) / 2 + (h * heightMm) / 2 + i);
  if (!(ratio > 0))
    return { mmPerPx: null, reason: 'The pot’s foot does not lie on the bench as the sheet shows it.' };
  const mmPerPx = ratio * mmPerPxAtSheet;
  // How much nearer the upper part stands is not known without the camera's distance.
  return { mmPerPx, doubt: mmPerPx * Math.hypot(sheetShare, aboveBenchMm > 0 ? 0.03 : 0.01) };
}

/** Depth along the camera's axis where the ray through a px meets the plane `beforeMm` before the sheet, mm. */
function depthOnPlane(
  { paperToPhoto }: SheetReading,
  { distanceMm, focalLengthPx, principalPx, normal }: SheetPose,
  px: PointPx | null,
  beforeMm: number,
  paper: 'A4' | 'Letter',
): number {
  if (normal === null) return distanceMm - beforeMm;
  const { widthMm, heightMm } = sheetGeometry(paper);
  const middle = rayTo(mapPoint(paperToPhoto, [widthMm / 2, heightMm / 2]), principalPx, focalLengthPx);
  const ray = px === null ? middle : rayTo(px, principalPx, focalLengthPx);
  const along = (v: readonly [number, number]) => normal[0] * v[0] + normal[1] * v[1] + normal[2];
  return (distanceMm * along(middle) + beforeMm) / along(ray);
}

/** Right and down for each step away along the camera's axis. */
function rayTo(px: PointPx, principalPx: PointPx, focalLengthPx: number): readonly [number, number] {
  return [(px[0] - principalPx[0]) / focalLengthPx, (px[1] - principalPx[1]) / focalLengthPx];
}

/** Where on the paper's plane a px lies, mm: the inverse map. */
function paperPlace([a, b, c, d, e, f, g, h, i]: SheetReading['paperToPhoto'], [x, y]: PointPx): PointPx {
  const w = x * (d * h - e * g) + y * (b * g - a * h) + (a * e - b * d);
  return [
    (x * (e * i - f * h) + y * (c * h - b * i) + (b * f - c * e)) / w,
    (x * (f * g - d * i) + y * (a * i - c * g) + (c * d - a * f)) / w,
  ];
}
