import { radOf } from './circular-statistics.ts';
import { elevationOfRing } from './level-view.ts';
import { USUAL_DISTANCE_IN_RADII } from './sight-lines.ts';
import type { TakenView } from './taken-view.ts';
import type { Camera } from './turned-view.ts';

/** Where the camera of a sitting stood. */
export interface SittingCamera {
  readonly camera: Camera;
  /** How steeply it looks down on the rim's middle, degrees, below the rim negative; `null` when unknown. */
  readonly elevationDeg: number | null;
  /** From the lens to the rim's middle as told or read off the stand sheet, mm; `null` when neither. */
  readonly slantMm: number | null;
  /** What could not be known, and why. */
  readonly notes: readonly string[];
}

/** Height of a pot ÷ diameter of its rim. Common practice, no source: 0.85 to 0.9 on full pots. */
const POT_HEIGHT_SHARE = 0.88;
/** Steeper than this the rim was misread: nobody photographs a silhouette from so high. */
const STEEPEST_DEG = 40;

/**
 * Tells where the camera stood, for all views of a sitting alike.
 *
 * @param views as taken
 * @param cameraHeightMm lens above what the pot stands on, as told of the stand; `null` when unknown
 *
 * How: the distance is the one told or read off the stand sheet, else focal length times scale, else a usual one. How steeply it looks down is told by the rim, a level
 * ring that reads as an ellipse (height ÷ width is the sine); where leaves hide its opening in every view, by the stand's height less a usual pot's.
 *
 * Notes: medians over the views. The rim tells the angle within 2°, which moves the hull's volume by less than 1 %.
 */
export function sittingCamera(views: readonly TakenView[], cameraHeightMm: number | null): SittingCamera {
  const told = median(views.flatMap(({ cameraDistanceMm }) => cameraDistanceMm ?? []));
  const steepness = median(
    views
      .flatMap(({ report }) => report.axis?.rimEllipse ?? [])
      .map(elevationOfRing)
      .filter((deg) => deg <= STEEPEST_DEG),
  );
  const byLens = median(views.flatMap((view) => slantByLens(view) ?? []));
  const slantMm = told ?? byLens;
  const elevationDeg = steepness ?? elevationByHeight(views, cameraHeightMm, slantMm);
  const cosine = Math.cos(radOf(elevationDeg ?? 0));
  const distanceMm = told ?? (byLens === null ? null : byLens * cosine);
  const notes =
    elevationDeg === null && views.length > 0
      ? [
          'How high the camera stands is not known, because leaves hide the rim’s opening and the stand does not tell it; it counts as level with the rim. Tell the stand the height of the lens.',
        ]
      : [];
  return {
    camera: cameraOf(distanceMm, elevationDeg),
    elevationDeg,
    slantMm: told === null ? null : told / cosine,
    notes,
  };
}

function cameraOf(distanceMm: number | null, elevationDeg: number | null): Camera {
  return distanceMm === null
    ? { distanceInRadii: USUAL_DISTANCE_IN_RADII, elevationDeg: elevationDeg ?? 0 }
    : { distanceMm, heightMm: distanceMm * Math.tan(radOf(elevationDeg ?? 0)) };
}

/** Lens to rim: what is as wide as the focal length in the picture is as far away as it is wide. */
function slantByLens({ focalLengthPx, report }: TakenView): number | null {
  return focalLengthPx === null || report.scale === null ? null : focalLengthPx * report.scale.mmPerPx;
}

function elevationByHeight(
  views: readonly TakenView[],
  cameraHeightMm: number | null,
  distanceMm: number | null,
): number | null {
  const rimMm = median(
    views.flatMap(({ report: { axis, scale } }) =>
      axis === null || scale === null ? [] : [(axis.rimRightPx[0] - axis.rimLeftPx[0]) * scale.mmPerPx],
    ),
  );
  if (cameraHeightMm === null || distanceMm === null || rimMm === null) return null;
  return (Math.atan2(cameraHeightMm - POT_HEIGHT_SHARE * rimMm, distanceMm) * 180) / Math.PI;
}

function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle];
  if (upper === undefined) return null;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}
