import type { Surface } from './hull-surface.ts';
import { hullForScreen } from './measure-hull.ts';
import { measureTurned, type TurnedReport } from './measure-turned.ts';
import { placeAxis } from './place-axis.ts';
import { rimPlaces } from './rim-places.ts';
import { type SittingCamera, sittingCamera } from './sitting-camera.ts';
import { type TakenView, turnedView } from './taken-view.ts';
import type { LightPlace } from './turn-advice.ts';
import { type SightedViews, sightedViews, type TurnedScene, turnedScene } from './turned-scene.ts';
import type { PlanUnit, TurnedView } from './turned-view.ts';
import { turnsAgainstCollar, withCollarTurns } from './turns-by-collar.ts';
import { usualBall } from './usual-ball.ts';

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
  const report = measureTurned(turnedViews(taken, place), { camera: place.camera, light, fixedCamera: true });
  const collar = turnsAgainstCollar(taken);
  // What the collar has told of a view the outlines need not tell again.
  const told = new Set(collar.faults.map(({ view }) => view));
  const others = report.faults.filter(({ kind, view }) => kind !== 'turn-wrong' || !told.has(view));
  return {
    ...report,
    faults: [...collar.faults, ...others],
    notes: [...report.notes, ...collar.notes, ...place.notes],
  };
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
  const scene = sceneOfViews(taken, { cameraHeightMm });
  const surface = hullForScreen(scene);
  if (surface === null) return null;
  const rims = scene.views.flatMap(({ view, sight }) =>
    view.potHalfWidthPx === null ? [] : [view.potHalfWidthPx * sight.unitPerPx],
  );
  return { ...surface, unit: scene.unit, rimRadius: rims.length === 0 ? null : Math.max(...rims) };
}

/** The views of a sitting ready for measuring. */
export function sceneOfViews(
  taken: readonly TakenView[],
  { cameraHeightMm }: Pick<JoinOptions, 'cameraHeightMm'>,
): TurnedScene {
  const place = sittingCamera(taken, cameraHeightMm);
  return turnedScene(placeAxis(turnedViews(taken, place)).views, place.camera);
}

/** The views of a sitting with how each sees the plant: quicker than a scene, where their outlines need not be read. */
export function sightedSitting(
  taken: readonly TakenView[],
  { cameraHeightMm }: Pick<JoinOptions, 'cameraHeightMm'>,
): SightedViews {
  const place = sittingCamera(taken, cameraHeightMm);
  return sightedViews(placeAxis(turnedViews(taken, place)).views, place.camera);
}

function turnedViews(asTaken: readonly TakenView[], camera: SittingCamera): (TurnedView | null)[] {
  const taken = withCollarTurns(asTaken);
  const rims = rimPlaces(taken);
  const usual = usualBall(taken);
  return taken.map((view, k) => {
    const rim = rims[k] ?? null;
    return rim === null || usual === null ? null : turnedView(view, camera, rim, usual);
  });
}
