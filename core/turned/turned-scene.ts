import { requirePositive } from '../errors/expect.ts';
import { readSilhouette } from '../silhouette/silhouette.ts';
import type { ComparedView } from './find-faults.ts';
import { outlinePlaces } from './outline-coherence.ts';
import { sightOf, unitPerPx } from './sight-lines.ts';
import { rowExtents, widestExtent } from './silhouette-extents.ts';
import { silhouetteField } from './silhouette-field.ts';
import type { OutlinedView } from './sphere-of-views.ts';
import { type SupportLine, supportLine } from './support-line.ts';
import type { Camera, PlanUnit, TurnedView } from './turned-view.ts';

/** A view of known turn with everything that is read off it once. */
export interface SceneView extends ComparedView, OutlinedView {
  readonly view: TurnedView & { readonly turnDeg: number };
  /** Its place in the list as given, from 0. */
  readonly index: number;
  readonly supports: readonly [left: SupportLine, right: SupportLine];
}

/** A view that says nothing of the plan: it was not measured or shows no rim, or nobody told its turn. */
export interface LeftOut {
  readonly index: number;
  readonly why: 'not-measured' | 'no-turn';
}

/** A sitting ready for measuring. */
export interface TurnedScene {
  readonly unit: PlanUnit;
  /** Views of known turn with canopy, in the order given. */
  readonly views: readonly SceneView[];
  /** Views left out, by their place in the list from 0. */
  readonly leftOut: readonly LeftOut[];
  /** Median of the views' own balls, plan's unit; 0 without views. */
  readonly usualRadius: number;
}

/**
 * Reads every view of a sitting once.
 *
 * @param views as taken; `null` for one that was not measured; those without a turn or canopy are left out
 * @param camera `null`: far away and level with the rim
 * @returns scene, in mm when every used view has a scale, else in px
 */
export function turnedScene(views: readonly (TurnedView | null)[], camera: Camera | null): TurnedScene {
  const { unit, usualRadius, sighted } = sightedViews(views, camera);
  const read = sighted.map((view) => view && readView(view));
  const used = read.filter((view) => view !== null);
  return {
    unit,
    views: used,
    leftOut: read.flatMap((view, index): LeftOut[] => {
      if (view !== null) return [];
      return [{ index, why: views[index]?.turnDeg === null ? 'no-turn' : 'not-measured' }];
    }),
    usualRadius,
  };
}

/** Views of known turn with how each sees the plant; nothing of their outlines is read yet. */
export interface SightedViews extends Pick<TurnedScene, 'unit' | 'usualRadius'> {
  /** In the order given; `null` for one that was not measured or has no turn. */
  readonly sighted: readonly (Pick<SceneView, 'view' | 'index' | 'sight'> | null)[];
}

/** How each view of a sitting sees the plant. */
export function sightedViews(views: readonly (TurnedView | null)[], camera: Camera | null): SightedViews {
  if (camera !== null && 'distanceMm' in camera) requirePositive(camera.distanceMm, 'camera.distanceMm');
  const unit: PlanUnit = views.every(
    (view) => view === null || view.turnDeg === null || view.mmPerPx !== null,
  )
    ? 'mm'
    : 'px';
  const radii = views
    .flatMap((view) =>
      view === null || view.turnDeg === null ? [] : [view.ballRadiusPx * unitPerPx(view, unit)],
    )
    .sort((a, b) => a - b);
  const usualRadius = radii[Math.floor(radii.length / 2)] ?? 0;
  return {
    unit,
    usualRadius,
    sighted: views.map((view, index) => {
      if (view === null || view.turnDeg === null) return null;
      const turned = { ...view, turnDeg: view.turnDeg };
      return { view: turned, index, sight: sightOf(turned, unit, camera, usualRadius) };
    }),
  };
}

function readView({ view, index, sight }: NonNullable<SightedViews['sighted'][number]>): SceneView | null {
  const field = silhouetteField(view, sight);
  const extent = widestExtent(rowExtents(view.canopy));
  const loops = readSilhouette(view.canopy)?.loops;
  if (field === null || extent === null || loops === undefined) return null;
  const placeOf = (xPx: number) => (xPx - view.axisXPx) * sight.unitPerPx;
  return {
    view,
    index,
    sight,
    field,
    loops,
    outline: outlinePlaces(loops, view, sight.unitPerPx),
    supports: [
      supportLine(sight, placeOf(extent[0]), 'left'),
      supportLine(sight, placeOf(extent[1]), 'right'),
    ],
  };
}
