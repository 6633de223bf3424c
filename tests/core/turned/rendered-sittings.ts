import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { type Draft, sittingView } from '../../../sample-images/render/season/sitting-view.ts';
import { PLAIN_PLACES } from '../../score/renders/places.ts';

/** A rendered plant to be photographed all round. */
export interface RenderedPlant {
  readonly name: string;
  readonly rimMm: number;
  /** What the camera's focal length is in px of the photo. */
  readonly focalLengthPx: number;
  readonly cameraDistanceMm: number;
  readonly turnsDeg: readonly number[];
  readonly views: readonly ViewOptions[];
  /** The view before last, its pot set down 15 mm further right. */
  readonly movedView: ViewOptions;
}

const EIGHTHS = [0, 45, 90, 135, 180, 225, 270, 315];
/** Bare plants have no shape to speak of. */
const PLACES = PLAIN_PLACES.filter(({ bare }) => !bare);
/** How far the top leans, mm: even, a little, and enough to be seen by eye. */
const LEANS_MM = [0, 40, 55, 25, 60, 0, 48, 70];
const MOVED_MM = 15;

/**
 * Plants of known shape on the plain stands of the scoring renders.
 *
 * @param count of plants
 * @param first number of the first: another one gives other plants
 */
export function renderedPlants(draft: Draft, first: number, count: number): RenderedPlant[] {
  return Array.from({ length: count }, (_, k) => {
    const number = first + k;
    const { name, season, week } = PLACES[number % PLACES.length] as (typeof PLACES)[number];
    const plant = {
      ...season.plant,
      seed: 5000 + 37 * number,
      leanMm: [[0, LEANS_MM[number % LEANS_MM.length] as number]] as const,
      leanAzimuthDeg: (number * 67) % 360,
    };
    const seeded = { ...season, plant };
    const views = EIGHTHS.map((turn) => sittingView(seeded, week, turn, draft, null));
    const { camera, widthPx } = views[0] as ViewOptions;
    const depthMm = Math.hypot(camera.distanceMm, camera.heightMm - camera.aimMm[1], camera.aimMm[0]);
    return {
      name: `${name} ${number}`,
      rimMm: season.pot.rimMm,
      focalLengthPx: (widthPx * depthMm) / camera.fieldMm,
      cameraDistanceMm: camera.distanceMm,
      turnsDeg: EIGHTHS,
      views,
      movedView: potMovedRight(views[2] as ViewOptions, MOVED_MM),
    };
  });
}

/** A pot moved right is seen a little turned, and the picture's middle falls left of it. */
function potMovedRight(view: ViewOptions, mm: number): ViewOptions {
  const { aimMm, distanceMm } = view.camera;
  const turnDeg = (Math.atan(mm / distanceMm) * 180) / Math.PI;
  return {
    ...view,
    turnDeg: view.turnDeg + turnDeg,
    camera: { ...view.camera, aimMm: [aimMm[0] - mm, aimMm[1]] },
  };
}
