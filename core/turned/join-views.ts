import type { Surface } from './hull-surface.ts';
import { hullForScreen } from './measure-hull.ts';
import { measureTurned, type TurnedReport } from './measure-turned.ts';
import { sittingCamera } from './sitting-camera.ts';
import { type TakenView, turnedView } from './taken-view.ts';
import type { LightPlace } from './turn-advice.ts';
import { turnedScene } from './turned-scene.ts';
import type { PlanUnit } from './turned-view.ts';

/** What is known beside the views. */
export interface JoinOptions {
  /** Lens above what the pot stands on, mm; `null` when unknown. */
  readonly cameraHeightMm: number | null;
  /** `null` when the light's side is not set. */
  readonly light: LightPlace | null;
}

/**
 * Joins the views of one sitting into one plan of the plant.
 *
 * @param taken views as measured by themselves, in the order taken; any number
 * @returns plan, turn advice, faults and notes; what cannot be known is `null` with its reason in the notes
 *
 * Example: `joinViews(views, { cameraHeightMm: null, light: null })`
 */
export function joinViews(taken: readonly TakenView[], { cameraHeightMm, light }: JoinOptions): TurnedReport {
  const place = sittingCamera(taken, cameraHeightMm);
  const report = measureTurned(
    taken.map((view) => turnedView(view, place)),
    { camera: place.camera, light, fixedCamera: true },
  );
  return { ...report, notes: [...report.notes, ...place.notes] };
}

/** The hull of a sitting for the screen. */
export interface SittingHull extends Surface {
  readonly unit: PlanUnit;
  /** Of the pot's rim, plan's unit; `null` when no view shows it. */
  readonly rimRadius: number | null;
}

/** The hull of a sitting as a solid; `null` when its views do not close round the plant. */
export function hullOfViews(
  taken: readonly TakenView[],
  { cameraHeightMm }: Pick<JoinOptions, 'cameraHeightMm'>,
): SittingHull | null {
  const place = sittingCamera(taken, cameraHeightMm);
  const scene = turnedScene(
    taken.map((view) => turnedView(view, place)),
    place.camera,
  );
  const surface = hullForScreen(scene);
  if (surface === null) return null;
  const rims = scene.views.flatMap(({ view, sight }) =>
    view.potHalfWidthPx === null ? [] : [view.potHalfWidthPx * sight.unitPerPx],
  );
  return { ...surface, unit: scene.unit, rimRadius: rims.length === 0 ? null : Math.max(...rims) };
}
