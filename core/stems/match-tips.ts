import type { Sphere } from '../turned/best-sphere.ts';
import { type SightLine, seenAt } from '../turned/sight-lines.ts';
import { depthAt, type SilhouetteField } from '../turned/silhouette-field.ts';
import type { PlantPoint } from '../turned/turned-view.ts';
import type { PlacedTip } from './placed-tip.ts';

/** The tips of one stem with its place. */
export interface MatchedTips {
  readonly tips: readonly PlacedTip[];
  readonly place: PlantPoint;
  readonly excess: number;
  /** One standard deviation of the excess. */
  readonly excessSd: number;
}

/** The rule of matching, all in one place; lengths as shares of the ball's radius. Chosen on rendered plants that no figure is reported on. */
export const RULE = {
  /** Steps and reach along a sight line. */
  step: 0.025,
  reach: 1,
  /** Long excesses are rare: each share of so much more is e times rarer. */
  excessScale: 0.2,
  /** What stands so far outside another silhouette is refuted: one standard deviation. */
  outside: 0.035,
  /** Tips of one stem in two views differ by so much: each shows another leaf outermost. */
  tip: 0.12,
  /** How much likelier a place is where another view shows a tip. */
  tipGain: 4,
  /** A tip this far from where the stem should show is not the stem's. */
  reachOfTip: 0.25,
  /** A tip so far beside a stem's line as seen, and so little beyond its end, is a leaf of it. */
  leafReach: 0.3,
  leafBeyond: 0.06,
  /** The leaves of a long stem reach so far to its sides. */
  besideStem: 0.42,
} as const;

/**
 * Matches the tips on the outlines of a turned sitting: which of them are one stem, and where in the plant's space it ends.
 *
 * How: a tip lies somewhere on its sight line. Each place of the line is weighed: outside another silhouette it is refuted; where another view shows a tip as well it is
 * likelier; and of two places the one less far out is likelier. The strongest tip goes first, takes the tips that the other views show where it is seen, and the rest follow.
 */
export function matchTips(
  tips: readonly PlacedTip[],
  fields: readonly SilhouetteField[],
  ball: Sphere,
): MatchedTips[] {
  const left = new Set([...tips].sort((a, b) => b.passes - a.passes));
  const stems: MatchedTips[] = [];
  for (const first of left) {
    left.delete(first);
    const guess = placeAlong(first, [first], [...left], fields, ball);
    const mine = withOthers(first, guess.likeliest, left, fields, ball);
    const spot = mine.length > 1 ? placeAlong(first, mine, [], fields, ball) : guess;
    for (const tip of mine) left.delete(tip);
    for (const tip of left) if (isLeafOf(tip, spot, fields, ball)) left.delete(tip);
    const most = Math.max(...mine.map(({ passes }) => passes));
    stems.push({
      tips: mine,
      place: spot.place,
      excess: Math.max(spot.excess, most),
      excessSd: spot.excessSd,
    });
  }
  return joinedTwins(stems, ball);
}

/** A find beside a longer stem is one of that stem's own leaves, or the same tip as another view shows it. */
function joinedTwins(stems: readonly MatchedTips[], ball: Sphere): MatchedTips[] {
  const joined: MatchedTips[] = [];
  for (const stem of [...stems].sort((a, b) => b.excess - a.excess)) {
    const owner = joined.findIndex((longer) => besideStem(stem.place, longer.place, ball));
    if (owner < 0) joined.push(stem);
    else {
      const longer = joined[owner] as MatchedTips;
      joined[owner] = { ...longer, tips: [...longer.tips, ...stem.tips] };
    }
  }
  return joined;
}

/** Whether a tip lies within the reach of a stem's leaves: so far from the line from the ball's centre to the stem's tip. */
function besideStem(tip: PlantPoint, stem: PlantPoint, { centre, radius }: Sphere): boolean {
  const a = [tip[0] - centre[0], tip[1] - centre[1], tip[2] - centre[2]] as const;
  const b = [stem[0] - centre[0], stem[1] - centre[1], stem[2] - centre[2]] as const;
  const along = (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / Math.hypot(...b);
  return along > 0 && Math.hypot(...a) ** 2 - along ** 2 < (RULE.besideStem * radius) ** 2;
}

interface Spot {
  readonly place: PlantPoint;
  /** The likeliest place: of several that are likely the mean may be none. */
  readonly likeliest: PlantPoint;
  readonly excess: number;
  readonly excessSd: number;
}

/** The mean place and excess along a tip's sight line, weighed by what the other views show. */
function placeAlong(
  tip: PlacedTip,
  mine: readonly PlacedTip[],
  others: readonly PlacedTip[],
  fields: readonly SilhouetteField[],
  { centre, radius }: Sphere,
): Spot {
  const { line } = tip;
  const foot = alongLine(line, centre);
  const places: { point: PlantPoint; excess: number; log: number; w: number }[] = [];
  for (let w = -RULE.reach; w <= RULE.reach; w += RULE.step) {
    const point = pointOn(line, foot + w * radius);
    const excess = Math.hypot(point[0] - centre[0], point[1] - centre[1], point[2] - centre[2]) - radius;
    let log = -(excess - tip.passes) / (RULE.excessScale * radius);
    fields.forEach((field, view) => {
      if (view === tip.view) return;
      const { x, y, zoom } = seenAt(field.sight, point);
      const depth = depthAt(field, x, y) / zoom;
      if (depth < 0) log -= 0.5 * (depth / (RULE.outside * radius)) ** 2;
      const near = (one: PlacedTip) =>
        Math.exp(-0.5 * (Math.hypot(one.x - x, one.y - y) / (RULE.tip * radius)) ** 2);
      const own = mine.filter((one) => one.view === view);
      if (own.length > 0) log += Math.log(1e-3 + Math.max(...own.map(near)));
      else {
        const nearest = Math.max(0, ...others.filter((one) => one.view === view).map(near));
        log += Math.log(1 + RULE.tipGain * nearest);
      }
    });
    places.push({ point, excess, log, w });
  }
  const best = Math.max(...places.map(({ log }) => log));
  const weights = places.map(({ log }) => Math.exp(log - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (one: (typeof places)[number]) => number) =>
    places.reduce((sum, one, k) => sum + (weights[k] as number) * of(one), 0) / total;
  const w = mean((one) => one.w);
  const excess = mean((one) => one.excess);
  const likeliest = places.find(({ log }) => log === best) as (typeof places)[number];
  return {
    place: pointOn(line, foot + w * radius),
    likeliest: likeliest.point,
    excess,
    excessSd: Math.sqrt(mean((one) => (one.excess - excess) ** 2)),
  };
}

/** Whether a tip shows no more than the leaves of a stem would there: beside its line as seen, and no further out than it. */
function isLeafOf(
  tip: PlacedTip,
  stem: Spot,
  fields: readonly SilhouetteField[],
  { centre, radius }: Sphere,
): boolean {
  const { sight } = fields[tip.view] as SilhouetteField;
  const [from, to] = [seenAt(sight, centre), seenAt(sight, stem.place)];
  const [sx, sy, tx, ty] = [to.x - from.x, to.y - from.y, tip.x - from.x, tip.y - from.y];
  const out = Math.hypot(sx, sy);
  const along = (tx * sx + ty * sy) / out;
  const beside = Math.abs(ty * sx - tx * sy) / out;
  return along > 0 && beside < RULE.leafReach * radius && Math.hypot(tx, ty) < out + RULE.leafBeyond * radius;
}

/** The nearest free tip of each other view within reach of where the place shows there. */
function withOthers(
  first: PlacedTip,
  place: PlantPoint,
  left: ReadonlySet<PlacedTip>,
  fields: readonly SilhouetteField[],
  { radius }: Sphere,
): PlacedTip[] {
  const mine = [first];
  fields.forEach((field, view) => {
    if (view === first.view) return;
    const { x, y } = seenAt(field.sight, place);
    let nearest: PlacedTip | null = null;
    let least = RULE.reachOfTip * radius;
    for (const tip of left) {
      const apart = Math.hypot(tip.x - x, tip.y - y);
      if (tip.view !== view || apart > least) continue;
      nearest = tip;
      least = apart;
    }
    if (nearest !== null) mine.push(nearest);
  });
  return mine;
}

function alongLine({ from, towards }: SightLine, point: PlantPoint): number {
  return (
    (point[0] - from[0]) * towards[0] + (point[1] - from[1]) * towards[1] + (point[2] - from[2]) * towards[2]
  );
}

function pointOn({ from, towards }: SightLine, way: number): PlantPoint {
  return [from[0] + way * towards[0], from[1] + way * towards[1], from[2] + way * towards[2]];
}
