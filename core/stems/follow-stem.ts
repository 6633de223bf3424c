import type { PointPx } from '../raster/raster.ts';
import type { SkeletonBranch, SkeletonGraph } from './skeleton-graph.ts';

/** The way of one stem through the skeleton. Px. */
export interface FollowedStem {
  /** From its tip down to where it leaves the pot. */
  readonly pathPx: readonly PointPx[];
  /** The sharpest turn on the way, rad: a stem is bent by less than a right angle. */
  readonly sharpestRad: number;
}

/** Directions at a joint are read off so much of the way, px: nearer to it the skeleton bends. */
const LOOK_PX = 14;
/** A bend costs as much as this way, px, for each unit of 1 − cos: a stem goes straight on through a crossing rather than take a shorter way. */
const BEND_PX = 260;

/**
 * Follows each stem from its tip to the foot of the plant, straight on through crossings.
 *
 * @param graph pruned skeleton
 * @param tips nodes that are stems' tips
 * @param isFoot whether a place is where stems leave the pot
 * @returns one way a tip, in the order of `tips`; `null` where none leads to the foot
 *
 * How: the cheapest way by length and bends (Dijkstra). A crossing of two stems is a joint, or two with a bridge between them: a branch too short
 * to have a direction is passed with the direction that led to it.
 *
 * Reference: Dijkstra (1959), A note on two problems in connexion with graphs, Numerische Mathematik 1:269–271; the cost is our own.
 */
export function followStems(
  graph: SkeletonGraph,
  tips: readonly number[],
  isFoot: (place: PointPx) => boolean,
): (FollowedStem | null)[] {
  const walks = walksOf(graph);
  return tips.map((tip) => follow(graph, walks, tip, isFoot));
}

/** A branch walked one way. */
interface Walk {
  readonly id: number;
  readonly branch: number;
  readonly to: number;
  readonly pathPx: readonly PointPx[];
  readonly lengthPx: number;
  /** Unit directions on leaving its first node and on arriving at its last; `null` when too short to have one. */
  readonly leaving: PointPx | null;
  readonly arriving: PointPx | null;
}

/** Walks by the node they start from. */
function walksOf({ nodes, branches }: SkeletonGraph): Walk[][] {
  const from: Walk[][] = nodes.map(() => []);
  branches.forEach((branch, place) => {
    const back: SkeletonBranch = {
      from: branch.to,
      to: branch.from,
      pathPx: [...branch.pathPx].reverse(),
    };
    [branch, back].forEach((one, way) => {
      from[one.from]?.push(walkOf(one, place, 2 * place + way));
    });
  });
  return from;
}

function walkOf({ to, pathPx }: SkeletonBranch, branch: number, id: number): Walk {
  const short = pathPx.length < LOOK_PX;
  const last = pathPx.length - 1;
  return {
    id,
    branch,
    to,
    pathPx,
    lengthPx: last,
    leaving: short ? null : direction(pathPx[2] as PointPx, pathPx[LOOK_PX - 1] as PointPx),
    arriving: short ? null : direction(pathPx[last - LOOK_PX + 1] as PointPx, pathPx[last - 2] as PointPx),
  };
}

interface State {
  readonly walk: Walk;
  readonly cost: number;
  readonly before: State | null;
  /** The direction that the way has, from its last branch long enough to have one. */
  readonly heading: PointPx | null;
  readonly headingOf: number;
  readonly sharpest: number;
}

function follow(
  { nodes }: SkeletonGraph,
  walks: readonly Walk[][],
  tip: number,
  isFoot: (place: PointPx) => boolean,
): FollowedStem | null {
  const open: State[] = [];
  const settled = new Set<string>();
  const extend = (before: State | null, node: number): void => {
    for (const walk of walks[node] ?? []) {
      if (before !== null && walk.branch === before.walk.branch) continue;
      const heading = before?.heading ?? null;
      const bend = heading === null || walk.leaving === null ? 0 : angleBetween(heading, walk.leaving);
      open.push({
        walk,
        before,
        cost: (before?.cost ?? 0) + walk.lengthPx + BEND_PX * (1 - Math.cos(bend)),
        heading: walk.arriving ?? heading,
        headingOf: walk.arriving === null ? (before?.headingOf ?? -1) : walk.id,
        sharpest: Math.max(before?.sharpest ?? 0, bend),
      });
    }
  };
  extend(null, tip);
  while (open.length > 0) {
    const at = open.reduce((best, one, k) => (one.cost < (open[best] as State).cost ? k : best), 0);
    const [state] = open.splice(at, 1) as [State];
    const key = `${state.walk.id} ${state.headingOf}`;
    if (settled.has(key)) continue;
    settled.add(key);
    const foot = state.walk.pathPx.findIndex(isFoot);
    if (foot >= 0) return { pathPx: wholePath(state, foot), sharpestRad: state.sharpest };
    if (nodes[state.walk.to]?.kind === 'joint') extend(state, state.walk.to);
  }
  return null;
}

/** The places from the tip to the foot on the last walk. */
function wholePath(last: State, foot: number): PointPx[] {
  const pieces = [last.walk.pathPx.slice(0, foot + 1)];
  for (let state = last.before; state !== null; state = state.before)
    pieces.unshift(state.walk.pathPx.slice(0, -1));
  return pieces.flat();
}

function direction([x0, y0]: PointPx, [x1, y1]: PointPx): PointPx {
  const length = Math.hypot(x1 - x0, y1 - y0);
  return length === 0 ? [0, 0] : [(x1 - x0) / length, (y1 - y0) / length];
}

function angleBetween(one: PointPx, other: PointPx): number {
  return Math.acos(Math.min(1, Math.max(-1, one[0] * other[0] + one[1] * other[1])));
}
