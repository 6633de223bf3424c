import type { Circle } from '../measures/circle.ts';
import type { PointPx } from '../raster/raster.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import { openArc } from '../silhouette/open-arc.ts';
import { radialProfile } from '../silhouette/radial-profile.ts';
import { passOf, type Sphere } from '../turned/best-sphere.ts';
import { type SightLine, seenAt, sightLine } from '../turned/sight-lines.ts';
import type { SceneView } from '../turned/turned-scene.ts';
import type { TurnedView } from '../turned/turned-view.ts';
import { type Crown, crownOf } from './crown.ts';
import { LONG_STEM_DEFAULTS } from './long-stems.ts';
import { outlineLobes, SHOULDER_RAD } from './outline-lobes.ts';

/** A tip on the outline of one view, at the plane of the axis: x right of the axis, y above the rim plane. Plan's unit. */
export interface PlacedTip {
  /** The view's place in the scene. */
  readonly view: number;
  readonly x: number;
  readonly y: number;
  readonly line: SightLine;
  /** How far the sight line passes outside the ball: the stem's excess is this or more. */
  readonly passes: number;
  readonly kind: 'shoot' | 'shoulder';
}

/** Tips that pass the ball by less are none of a long stem, share of its radius. */
const LEAST_PASS = 0.04;
const TOLERANCE = 0.02;
/** A bushy plant's centre stands about so far above its rim, share of its radius: near enough to begin with. */
const USUAL_HEIGHT = 0.7;

/** The crown of one view, px. */
export function crownOfView({ view, loops }: SceneView): Crown | null {
  const start: Circle = {
    centre: [view.axisXPx, view.rimYPx - USUAL_HEIGHT * view.ballRadiusPx],
    radius: view.ballRadiusPx,
  };
  return crownOf(loops, rimOfView(view), start);
}

/** The sight lines through places on a view's picture, px. */
export function sightLinesOf({ view, sight }: SceneView, places: readonly PointPx[]): SightLine[] {
  return places.map(([x, y]) =>
    sightLine(sight, (x - view.axisXPx) * sight.unitPerPx, (view.rimYPx - y) * sight.unitPerPx),
  );
}

/** The tips that a view's outline shows outside a ball. */
export function placedTips(scene: SceneView, place: number, ball: Sphere): PlacedTip[] {
  const { view, sight, loops } = scene;
  const seen = seenAt(sight, ball.centre);
  const centre: PointPx = [view.axisXPx + seen.x / sight.unitPerPx, view.rimYPx - seen.y / sight.unitPerPx];
  const profile = radialProfile(loops, centre, openArc(centre, rimOfView(view)));
  const radiusPx = seenRadius(ball.radius, sight.camera?.distanceMm ?? null) / sight.unitPerPx;
  const lobes = outlineLobes(profile, {
    radiusPx,
    tolerancePx: TOLERANCE * radiusPx,
    valleyPx: LONG_STEM_DEFAULTS.valley * radiusPx,
    shoulderRad: SHOULDER_RAD,
  });
  return lobes.flatMap(({ tipPx, kind }): PlacedTip[] => {
    const [line] = sightLinesOf(scene, [tipPx]) as [SightLine];
    const passes = passOf(line, ball.centre).distance - ball.radius;
    if (passes < LEAST_PASS * ball.radius) return [];
    const [x, y] = [(tipPx[0] - view.axisXPx) * sight.unitPerPx, (view.rimYPx - tipPx[1]) * sight.unitPerPx];
    return [{ view: place, x, y, line, passes, kind }];
  });
}

/** A near camera sees a ball's outline before its middle, so a little larger. */
export function seenRadius(radius: number, distance: number | null): number {
  if (distance === null || distance <= radius) return radius;
  return (radius * distance) / Math.sqrt(distance ** 2 - radius ** 2);
}

/** The ends of the pot's rim on a view's picture, px; `null` without a pot. */
export function rimOfView({ axisXPx, rimYPx, potHalfWidthPx }: TurnedView): RimEnds | null {
  if (potHalfWidthPx === null) return null;
  return { rimLeftPx: [axisXPx - potHalfWidthPx, rimYPx], rimRightPx: [axisXPx + potHalfWidthPx, rimYPx] };
}
