import { FORM_UPR, smoothProfile } from '../measures/gaussian-profile-filter.ts';
import { clearOfRim } from '../measures/roundness.ts';
import type { PointPx } from '../raster/raster.ts';
import { openArc, type RimEnds } from '../silhouette/open-arc.ts';
import type { Loop } from '../silhouette/outline.ts';
import { profilePoints, radialProfile } from '../silhouette/radial-profile.ts';
import { bestSphere, passOf, type Sphere } from './best-sphere.ts';
import { type SightLine, seenAt, sightLine, type ViewSight } from './sight-lines.ts';
import type { PlantPoint, TurnedView } from './turned-view.ts';

/** A view with its outline traced once. */
export interface OutlinedView {
  readonly view: TurnedView;
  readonly sight: ViewSight;
  readonly loops: readonly Loop[];
}

/** The balls that a turned plant fills, plan's unit. */
export interface TurnedBalls {
  /** Centre anywhere. */
  readonly free: Sphere;
  /** Centre on the plant axis. */
  readonly onAxis: Sphere;
  /** Outermost less innermost of the form of all outlines about the free centre. */
  readonly outOfRound: number;
}

/** Two degrees: fine enough for form. */
const DIRECTIONS_PER_TURN = 180;
const ROUNDS = 3;

/**
 * Fits the balls to the outlines of all views.
 *
 * @param views at least one
 * @param start a ball to begin with, plan's unit
 * @returns balls and out of round, or `null` when the outlines fix none
 *
 * How: each outline is read as a profile about the centre's place on that picture, over the directions that the pot does not hide, and smoothed to
 * form (15 undulations a revolution); the ball is fitted to the sight lines through its points. Profile and ball depend on each other, so both are
 * taken three times.
 *
 * Notes: out of round leaves out 6° at the rim, as in one view (`clearOfRim`). It is about the least-squares centre, so it is a little larger than about the minimum-zone one; what no silhouette shows is
 * not in it.
 *
 * Reference: ISO 12181-1 and -2:2011 carried over from circle to ball.
 */
export function ballsOfViews(views: readonly OutlinedView[], start: Sphere): TurnedBalls | null {
  let free = start;
  let forms: FormLines[] = [];
  let lines: SightLine[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    forms = views.map((view) => formLines(view, free.centre));
    lines = forms.flatMap(({ all }) => all);
    const fitted = bestSphere(lines, free, false);
    if (fitted === null) return null;
    free = fitted;
  }
  const onAxis = bestSphere(lines, free, true);
  if (onAxis === null) return null;
  let [inner, outer] = [Number.POSITIVE_INFINITY, 0];
  for (const line of forms.flatMap(({ clear }) => clear)) {
    const { distance } = passOf(line, free.centre);
    inner = Math.min(inner, distance);
    outer = Math.max(outer, distance);
  }
  return { free, onAxis, outOfRound: outer - inner };
}

/** Sight lines through the form of one outline: all, and those clear of the rim. */
interface FormLines {
  readonly all: readonly SightLine[];
  readonly clear: readonly SightLine[];
}

/** The sight lines through the form of one outline about a point of the plant. */
function formLines({ view, sight, loops }: OutlinedView, centre: PlantPoint): FormLines {
  const { axisXPx, rimYPx, potHalfWidthPx } = view;
  const seen = seenAt(sight, centre);
  const centrePx: PointPx = [axisXPx + seen.x / sight.unitPerPx, rimYPx - seen.y / sight.unitPerPx];
  const rim: RimEnds | null =
    potHalfWidthPx === null
      ? null
      : { rimLeftPx: [axisXPx - potHalfWidthPx, rimYPx], rimRightPx: [axisXPx + potHalfWidthPx, rimYPx] };
  const profile = radialProfile(loops, centrePx, openArc(centrePx, rim), DIRECTIONS_PER_TURN);
  if (profile.radiiPx.length < 3) return { all: [], clear: [] };
  const form = smoothProfile(profile, FORM_UPR);
  const lineThrough = ([x, y]: PointPx) =>
    sightLine(sight, (x - axisXPx) * sight.unitPerPx, (rimYPx - y) * sight.unitPerPx);
  return {
    all: profilePoints(form)
      .filter((_, k) => (form.radiiPx[k] as number) > 0)
      .map(lineThrough),
    clear: clearOfRim(form).map(lineThrough),
  };
}
