import type { PhotoReport } from '../../core/report.ts';
import { hullOfViews, joinViews } from '../../core/turned/join-views.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import type { TakenView } from '../../core/turned/taken-view.ts';
import type { LightPlace } from '../../core/turned/turn-advice.ts';
import { maskOfPng } from '../intake/decode-picture.ts';
import type { HullSolid } from '../schemas/turned.ts';

/** What measuring a photo leaves beside its report for joining it with others. */
export interface ViewLens {
  /** Px of the photo as stored upright; `null` when unknown. */
  readonly focalLengthPx: number | null;
  /** Level distance from camera to plant axis as told or read off the stand sheet; `null` when unknown. */
  readonly cameraDistanceMm: number | null;
}

/** The views of one sitting, in the order taken; plain data, as it crosses to a worker thread. */
export interface SittingTask {
  readonly views: readonly SittingView[];
  /** Lens above what the pot stands on; `null` when the stand does not tell it. */
  readonly cameraHeightMm: number | null;
  readonly light: LightPlace | null;
}

export interface SittingView {
  readonly report: PhotoReport;
  /** Canopy as any of the PNGs that measuring makes; `null` when nothing was cut out. */
  readonly maskPng: Uint8Array | null;
  readonly lens: ViewLens;
}

/** Joins the views of one sitting into one plan. */
export async function joinSitting(task: SittingTask): Promise<TurnedReport> {
  return joinViews(await takenViews(task), task);
}

/** The hull of a sitting as a solid; `null` when its views do not close round the plant. */
export async function hullOfSitting(
  task: SittingTask,
): Promise<Omit<HullSolid, 'weakAzimuthDeg' | 'heavyAzimuthDeg'> | null> {
  const hull = hullOfViews(await takenViews(task), task);
  if (hull === null) return null;
  return {
    unit: hull.unit,
    corners: Array.from(hull.corners, (length) => Math.round(10 * length) / 10),
    triangles: Array.from(hull.triangles),
    heightOfRim: 0,
    rimRadius: hull.rimRadius,
  };
}

/** The views of a sitting with their masks unpacked. */
export function takenViews({ views }: SittingTask): Promise<TakenView[]> {
  return Promise.all(views.map(takenView));
}

async function takenView({ report, maskPng, lens }: SittingView): Promise<TakenView> {
  return { report, canopy: maskPng === null ? null : await maskOfPng(maskPng), ...lens };
}
