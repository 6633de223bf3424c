import { passOf } from '../turned/best-sphere.ts';
import { turnBetween } from '../turned/circular-statistics.ts';
import { factorCovariance, solveCovariance } from '../turned/covariance.ts';
import { type SightLine, seenAt } from '../turned/sight-lines.ts';
import { depthAt } from '../turned/silhouette-field.ts';
import type { SceneView } from '../turned/turned-scene.ts';
import type { PlantPoint } from '../turned/turned-view.ts';

/** The end of a bare stem in one view, at the plane of the axis, plan's unit. */
export interface BareTip {
  /** The view's place in the scene, and the stem's in that view. */
  readonly view: number;
  readonly stem: number;
  readonly x: number;
  readonly y: number;
  readonly line: SightLine;
}

/** The ends that are one stem's, with its place. */
export interface MatchedEnd {
  readonly tips: readonly BareTip[];
  readonly place: PlantPoint;
  /** Root mean square distance of the sight lines from the place. */
  readonly missedBy: number;
}

/** Sight lines of one end miss each other by up to this, plan's unit as a share of the plant's radius. */
const MOST_MISS = 0.03;
/** Outside a silhouette by more than this the place is refuted, share of the radius. */
const MOST_OUTSIDE = 0.03;
/** Views less than this apart (or from being opposite) fix no depth, degrees. */
const LEAST_TURN_DEG = 15;

/**
 * Matches the ends of bare stems between views.
 *
 * @param tips of all views
 * @param views for what each silhouette shows at a place
 * @param radius of the plant, plan's unit
 * @returns ends, those seen most often first; each tip belongs to one end at most, and tips that match none are left out
 *
 * How: an end stands at one height in all views and wanders as a sinusoid with the turn, so its sight lines meet in a point. Every two tips of views that differ in
 * direction propose a point; each other view shows a tip there, or hides it within its silhouette, or refutes it. Points with most tips are taken first, of these the one
 * whose lines meet best. Least squares of the distances from all its lines.
 */
export function matchBareTips(
  tips: readonly BareTip[],
  views: readonly SceneView[],
  radius: number,
): MatchedEnd[] {
  const proposals: MatchedEnd[] = [];
  for (const [k, one] of tips.entries()) {
    for (const other of tips.slice(k + 1)) {
      if (!differInDirection(views, one.view, other.view)) continue;
      const end = proposedEnd([one, other], tips, views, radius);
      if (end !== null) proposals.push(end);
    }
  }
  proposals.sort((a, b) => b.tips.length - a.tips.length || a.missedBy - b.missedBy);
  const taken = new Set<BareTip>();
  return proposals.filter((end) => {
    if (end.tips.some((tip) => taken.has(tip))) return false;
    for (const tip of end.tips) taken.add(tip);
    return true;
  });
}

function differInDirection(views: readonly SceneView[], one: number, other: number): boolean {
  const turn = (view: number) => (views[view] as SceneView).view.turnDeg;
  return Math.abs(turnBetween(2 * turn(one), 2 * turn(other))) / 2 > LEAST_TURN_DEG;
}

/** The end that two tips propose, with the tips that other views show there; `null` where they miss each other or a view refutes it. */
function proposedEnd(
  pair: readonly [BareTip, BareTip],
  tips: readonly BareTip[],
  views: readonly SceneView[],
  radius: number,
): MatchedEnd | null {
  const first = meetingPoint(pair.map(({ line }) => line));
  if (first === null || missOf(pair, first) > MOST_MISS * radius) return null;
  const mine: BareTip[] = [...pair];
  for (const [place, { sight, field }] of views.entries()) {
    if (pair.some(({ view }) => view === place)) continue;
    const { x, y, zoom } = seenAt(sight, first);
    let nearest: BareTip | null = null;
    let least = MOST_MISS * radius * zoom;
    for (const tip of tips) {
      if (tip.view !== place) continue;
      const apart = Math.hypot(tip.x - x, tip.y - y);
      if (apart > least) continue;
      nearest = tip;
      least = apart;
    }
    if (nearest !== null) mine.push(nearest);
    else if (depthAt(field, x, y) < -MOST_OUTSIDE * radius) return null;
  }
  const place = meetingPoint(mine.map(({ line }) => line));
  return place === null ? null : { tips: mine, place, missedBy: missOf(mine, place) };
}

function missOf(tips: readonly BareTip[], place: PlantPoint): number {
  const squares = tips.reduce((sum, { line }) => sum + passOf(line, place).distance ** 2, 0);
  return Math.sqrt(squares / tips.length);
}

/** The point nearest to some lines: least squares of the distances, Σ (I − d dᵀ) p = Σ (I − d dᵀ) from. */
function meetingPoint(lines: readonly SightLine[]): PlantPoint | null {
  const across = (towards: PlantPoint, row: number, column: number) =>
    (row === column ? 1 : 0) - (towards[row] as number) * (towards[column] as number);
  const normal = factorCovariance(3, (row, column) =>
    lines.reduce((sum, { towards }) => sum + across(towards, row, column), 0),
  );
  if (normal === null) return null;
  const right = [0, 1, 2].map((row) =>
    lines.reduce(
      (sum, { from, towards }) =>
        sum +
        [0, 1, 2].reduce((part, column) => part + across(towards, row, column) * (from[column] as number), 0),
      0,
    ),
  );
  const [u, v, h] = solveCovariance(normal, right);
  return [u as number, v as number, h as number];
}
